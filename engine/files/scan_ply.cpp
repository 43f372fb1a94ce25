// PLY: elements as the header describes them, one after another; see ply_header.cpp for the source.
#include "engine/files/ply_header.h"
#include "engine/files/scan_bytes.h"
#include "engine/files/scan_readers.h"
#include "engine/files/scan_text.h"

#include <algorithm>
#include <limits>
#include <type_traits>

namespace engine {
namespace {

// The two sources below give the body's numbers, whatever their type, one after another. Where
// they give false, `fault()` says why.

class BinarySource {
public:
    BinarySource(std::string_view bytes, const PlyHeader& header)
        : bytes_{bytes},
          at_{header.bytes},
          order_{header.form == PlyForm::big_endian ? ByteOrder::big : ByteOrder::little} {}

    std::size_t offset() const { return at_; }
    std::size_t bytes_left() const { return bytes_.size() - at_; }
    std::string place(std::string_view element, std::uint64_t index) const {
        return std::string(element.substr(0, 40)) + " " + std::to_string(index + 1);
    }
    std::string fault() const {
        return "the file ends here though more belongs to it; save the scan again";
    }

    bool number(PlyType type, float& value) { return convert(type, value); }
    bool integer(PlyType type, std::int64_t& value) { return convert(type, value); }
    bool skip(PlyType type, std::uint64_t count) {
        if (count > bytes_left() / size_of(type)) return false;
        at_ += static_cast<std::size_t>(count) * size_of(type);
        return true;
    }
    bool has_at_least(PlyType type, std::uint64_t count) const {
        return count <= bytes_left() / size_of(type);
    }
    // Some programs end the file with a line end or fill it up.
    bool is_used_up() const {
        return bytes_.find_first_not_of(std::string_view{"\0\r\n \x1A", 5}, at_) == bytes_.npos;
    }

private:
    template <class Value, class Wanted>
    bool take(Wanted& wanted) {
        if (bytes_left() < sizeof(Value)) return false;
        wanted = narrowed<Wanted>(value_at<Value>(bytes_.data() + at_, order_));
        at_ += sizeof(Value);
        return true;
    }
    template <class Wanted, class Value>
    static Wanted narrowed(Value value) {
        if constexpr (std::is_same_v<Wanted, float> && std::is_same_v<Value, double>) {
            constexpr auto most = static_cast<double>(std::numeric_limits<float>::max());
            if (value > most || value < -most) return std::numeric_limits<float>::infinity();
        }
        return static_cast<Wanted>(value);
    }
    template <class Wanted>
    bool convert(PlyType type, Wanted& wanted) {
        switch (type) {
            case PlyType::int8:
                return take<std::int8_t>(wanted);
            case PlyType::uint8:
                return take<std::uint8_t>(wanted);
            case PlyType::int16:
                return take<std::int16_t>(wanted);
            case PlyType::uint16:
                return take<std::uint16_t>(wanted);
            case PlyType::int32:
                return take<std::int32_t>(wanted);
            case PlyType::uint32:
                return take<std::uint32_t>(wanted);
            case PlyType::float32:
            case PlyType::float64:
                break;
        }
        if constexpr (std::is_same_v<Wanted, float>)
            return type == PlyType::float32 ? take<float>(wanted) : take<double>(wanted);
        return false;  // asked for no whole number by the header's checks
    }

    std::string_view bytes_;
    std::size_t at_;
    ByteOrder order_;
};

class TextSource {
public:
    TextSource(std::string_view bytes, const PlyHeader& header)
        : header_bytes_{header.bytes},
          text_{bytes.substr(header.bytes), header.lines + 1},
          body_bytes_{bytes.size() - header.bytes} {}

    std::size_t offset() const { return header_bytes_ + text_.offset(); }
    std::size_t bytes_left() const { return body_bytes_ - text_.offset(); }
    std::string place(std::string_view, std::uint64_t) const {
        return "line " + std::to_string(text_.line());
    }
    std::string fault() const { return no_number(text_.next_word()); }

    bool number(PlyType, float& value) {
        text_.skip_space();
        return text_.number(value);
    }
    bool integer(PlyType, std::int64_t& value) {
        text_.skip_space();
        return text_.integer(value);
    }
    bool skip(PlyType, std::uint64_t count) {
        for (std::uint64_t i = 0; i < count; ++i) {
            text_.skip_space();
            if (text_.word().empty()) return false;
        }
        return true;
    }
    bool has_at_least(PlyType, std::uint64_t count) const { return count <= bytes_left() / 2; }
    bool is_used_up() {
        text_.skip_space();
        return text_.is_at_end();
    }

private:
    std::size_t header_bytes_;
    ScanText text_;
    std::size_t body_bytes_;
};

template <class Source>
class BodyReader {
public:
    BodyReader(ScanReading& reading, const PlyHeader& header)
        : reading_{reading},
          header_{header},
          source_{reading.bytes(), header},
          vertices_{static_cast<std::int64_t>(header.count_of(PlyKind::vertex))} {}

    bool read() {
        for (const auto& element : header_.elements) {
            element_ = &element;
            if (!make_room()) return false;
            for (index_ = 0; index_ < element.count; ++index_)
                if (!reading_.goes_on(source_.offset()) || !read_one()) return false;
        }
        if (source_.is_used_up()) return true;
        return reading_.fail("",
                             "the file goes on behind what its header promises; it is damaged, "
                             "so save the scan again");
    }

private:
    bool fail(std::string message) {
        return reading_.fail(source_.place(element_->name, index_), std::move(message));
    }

    // Counts are no more than the bytes can hold, but a face may be as short as an empty list.
    bool make_room() {
        const auto count = static_cast<std::size_t>(element_->count);
        if (element_->kind == PlyKind::vertex) return reading_.make_room_for_points(count);
        if (element_->kind != PlyKind::face) return true;
        const auto& properties = element_->properties;
        const auto corners = std::find_if(
            properties.begin(), properties.end(),
            [](const PlyProperty& property) { return property.role == PlyRole::corners; });
        if (corners == properties.end()) return true;  // no faces at all
        const bool is_text = header_.form == PlyForm::ascii;
        const std::size_t least =
            is_text ? 8 : size_of(corners->count_type) + 3 * size_of(corners->type);
        return reading_.make_room_for_triangles(std::min(count, source_.bytes_left() / least));
    }

    bool read_one() {
        ScanPoint point{};
        for (const auto& property : element_->properties) {
            const bool is_good =
                property.is_list ? read_list(property) : read_number(property, point);
            if (!is_good) return false;
        }
        return element_->kind != PlyKind::vertex || reading_.add(point);
    }

    bool read_number(const PlyProperty& property, ScanPoint& point) {
        if (property.role == PlyRole::other)
            return source_.skip(property.type, 1) || fail(source_.fault());
        const auto axis =
            static_cast<std::size_t>(property.role) - static_cast<std::size_t>(PlyRole::x);
        return source_.number(property.type, point[axis]) || fail(source_.fault());
    }

    bool read_list(const PlyProperty& property) {
        std::int64_t length = 0;
        if (!source_.integer(property.count_type, length)) return fail(source_.fault());
        if (length < 0 ||
            !source_.has_at_least(property.type, static_cast<std::uint64_t>(length))) {
            return fail("a list here has the length " + std::to_string(length) +
                        ", which the file cannot hold; it is damaged, so save the scan again");
        }
        if (property.role == PlyRole::corners) return read_corners(property.type, length);
        return source_.skip(property.type, static_cast<std::uint64_t>(length)) ||
               fail(source_.fault());
    }

    bool read_corners(PlyType type, std::int64_t length) {
        ScanFan fan{reading_};
        for (std::int64_t i = 0; i < length; ++i) {
            std::int64_t corner = 0;
            if (!source_.integer(type, corner)) return fail(source_.fault());
            if (corner < 0 || corner >= vertices_) {
                return fail("a face refers to vertex " + std::to_string(corner) +
                            " but there are " + std::to_string(vertices_) +
                            ", counted from 0; the file is damaged, so save the scan again");
            }
            if (!fan.add(static_cast<std::uint32_t>(corner))) return false;
        }
        fan.end();
        return true;
    }

    ScanReading& reading_;
    const PlyHeader& header_;
    Source source_;
    std::int64_t vertices_;
    const PlyElement* element_ = nullptr;
    std::uint64_t index_ = 0;
};

}  // namespace

bool is_ply(std::string_view bytes) {
    return bytes.starts_with("ply") && bytes.size() > 3 && (bytes[3] == '\n' || bytes[3] == '\r');
}

bool read_ply(ScanReading& reading) {
    if (!is_ply(reading.bytes()))
        return reading.fail("line 1",
                            "a PLY file begins with the line \"ply\"; save the scan again");
    const auto header = read_ply_header(reading.bytes());
    if (!header) return reading.fail(header.error().where, header.error().message);
    if (header->form == PlyForm::ascii) return BodyReader<TextSource>{reading, *header}.read();
    return BodyReader<BinarySource>{reading, *header}.read();
}

}  // namespace engine
