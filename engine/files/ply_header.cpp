// PLY from memory: common practice after the format's first description (G. Turk, 1994) and the
// type names that later programs use beside its own.
#include "engine/files/ply_header.h"

#include "engine/files/json_text.h"
#include "engine/files/scan_text.h"

#include <algorithm>
#include <array>
#include <optional>

namespace engine {
namespace {

constexpr std::size_t most_elements = 64;

std::optional<PlyType> type_named(std::string_view name) {
    struct Name {
        std::string_view name;
        PlyType type;
    };
    using enum PlyType;
    constexpr std::array names = {
        Name{"char", int8},      Name{"int8", int8},       Name{"uchar", uint8},
        Name{"uint8", uint8},    Name{"short", int16},     Name{"int16", int16},
        Name{"ushort", uint16},  Name{"uint16", uint16},   Name{"int", int32},
        Name{"int32", int32},    Name{"uint", uint32},     Name{"uint32", uint32},
        Name{"float", float32},  Name{"float32", float32}, Name{"double", float64},
        Name{"float64", float64}};
    const auto found =
        std::find_if(names.begin(), names.end(), [&](const Name& one) { return one.name == name; });
    if (found == names.end()) return std::nullopt;
    return found->type;
}

PlyKind kind_named(std::string_view name) {
    if (name == "vertex") return PlyKind::vertex;
    if (name == "face") return PlyKind::face;
    return PlyKind::other;
}

PlyRole role_named(std::string_view name, PlyKind kind) {
    if (kind == PlyKind::vertex) {
        if (name == "x") return PlyRole::x;
        if (name == "y") return PlyRole::y;
        if (name == "z") return PlyRole::z;
    }
    if (kind == PlyKind::face && (name == "vertex_indices" || name == "vertex_index"))
        return PlyRole::corners;
    return PlyRole::other;
}

std::ptrdiff_t count_with(const PlyElement& element, PlyRole role) {
    return std::count_if(element.properties.begin(), element.properties.end(),
                         [&](const PlyProperty& property) { return property.role == role; });
}

class HeaderReader {
public:
    explicit HeaderReader(std::string_view bytes) : bytes_{bytes}, text_{bytes} {}

    Result<PlyHeader> read() {
        text_.skip_line();  // "ply"
        while (!is_done_) {
            line_ = text_.line();
            if (text_.is_at_end()) return fault("the header does not end; save the scan again");
            if (!read_line()) return error_;
            text_.skip_line();
        }
        if (!has_form_) return fault("the header does not say its format");
        header_.bytes = text_.offset();
        // Where lines end in '\r' alone, a '\n' behind the last one is the body's first byte.
        const bool ends_in_cr = bytes_.size() > 4 && bytes_[3] == '\r' && bytes_[4] != '\n';
        if (ends_in_cr && bytes_[header_.bytes - 1] == '\n') --header_.bytes;
        header_.lines = text_.line() - 1;
        if (!is_usable() || !fits()) return error_;
        return std::move(header_);
    }

private:
    Error fault(std::string message) const {
        return {ErrorCode::bad_file, "line " + std::to_string(line_), std::move(message)};
    }
    bool fail(std::string message) {
        error_ = fault(std::move(message));
        return false;
    }

    std::string_view word() {
        text_.skip_blanks();
        return text_.word();
    }

    bool read_line() {
        const auto keyword = word();
        if (keyword == "format") return read_form();
        if (keyword == "element") return read_element();
        if (keyword == "property") return read_property();
        if (keyword == "end_header") return is_done_ = true;
        if (keyword == "comment" || keyword == "obj_info" || keyword.empty()) return true;
        return fail(json_quoted(in_short(keyword, 30)) +
                    " does not belong in the header of a PLY file");
    }

    bool read_form() {
        const auto name = word();
        has_form_ = true;
        if (name == "ascii") {
            header_.form = PlyForm::ascii;
        } else if (name == "binary_little_endian") {
            header_.form = PlyForm::little_endian;
        } else if (name == "binary_big_endian") {
            header_.form = PlyForm::big_endian;
        } else {
            return fail("the format " + json_quoted(in_short(name, 30)) +
                        " is not known; save the scan as ASCII or binary PLY");
        }
        return true;
    }

    bool read_element() {
        if (header_.elements.size() == most_elements)
            return fail("more than " + std::to_string(most_elements) + " kinds of elements");
        PlyElement element;
        element.name = word();
        element.kind = kind_named(element.name);
        text_.skip_blanks();
        if (!text_.integer(element.count)) {
            return fail("the element " + json_quoted(in_short(element.name, 30)) +
                        " needs a count: a whole number, not below nought");
        }
        const auto is_same = [&](const PlyElement& other) { return other.name == element.name; };
        if (std::any_of(header_.elements.begin(), header_.elements.end(), is_same))
            return fail("the element " + json_quoted(in_short(element.name, 30)) +
                        " is there twice");
        header_.elements.push_back(std::move(element));
        return true;
    }

    bool read_type(PlyType& type) {
        const auto name = word();
        const auto found = type_named(name);
        if (!found) return fail(json_quoted(in_short(name, 30)) + " is not a type of a PLY file");
        type = *found;
        return true;
    }

    bool read_property() {
        if (header_.elements.empty()) return fail("a property before any element");
        auto& element = header_.elements.back();
        PlyProperty property;
        text_.skip_blanks();
        property.is_list = text_.next_word() == "list";
        if (property.is_list) {
            text_.word();
            if (!read_type(property.count_type)) return false;
            if (!is_whole(property.count_type))
                return fail("a list's length cannot be a number with decimals");
        }
        if (!read_type(property.type)) return false;
        property.role = role_named(word(), element.kind);
        if (property.role != PlyRole::other && count_with(element, property.role) > 0)
            return fail("this property is there twice");
        if (property.is_list != (property.role == PlyRole::corners) &&
            property.role != PlyRole::other)
            return fail("corners of faces must be a list, and coordinates must not");
        if (property.role == PlyRole::corners && !is_whole(property.type))
            return fail("corners of faces must be whole numbers");
        element.properties.push_back(property);
        return true;
    }

    bool is_usable() {
        bool has_vertices = false;
        for (const auto& element : header_.elements) {
            if (element.count == 0) continue;
            if (element.properties.empty()) {
                return fail("the element " + json_quoted(in_short(element.name, 30)) +
                            " has no properties");
            }
            if (element.kind == PlyKind::face && count_with(element, PlyRole::corners) == 0)
                return fail("the faces have no vertex_indices; save the scan again");
            if (element.kind != PlyKind::vertex) continue;
            has_vertices = true;
            for (const auto role : {PlyRole::x, PlyRole::y, PlyRole::z})
                if (count_with(element, role) == 0)
                    return fail("the vertices do not have x, y and z; save the scan again");
        }
        if (!has_vertices) return fail("the file holds no vertices; save the scan as a mesh");
        if (header_.count_of(PlyKind::face) > 0) return true;
        return fail(
            "the file is a cloud of points without faces; make a mesh of it in the scanning "
            "program and save that");
    }

    // A cut file is told here, and no count is believed that its bytes cannot hold.
    bool fits() {
        std::uint64_t left = bytes_.size() - header_.bytes;
        for (const auto& element : header_.elements) {
            const auto least = least_bytes(element, header_.form);
            // The last number of an ASCII file needs nothing behind it.
            const std::uint64_t spare = header_.form == PlyForm::ascii ? 1 : 0;
            if (element.count > 0 && element.count > (left + spare) / least) {
                return fail("the header promises " + std::to_string(element.count) + " of " +
                            json_quoted(in_short(element.name, 30)) +
                            ", more than the file can hold; it is cut off or damaged, so save the "
                            "scan again");
            }
            left -= std::min(left, element.count * least);
        }
        return true;
    }

    std::string_view bytes_;
    ScanText text_;
    PlyHeader header_;
    std::size_t line_ = 1;
    bool has_form_ = false;
    bool is_done_ = false;
    Error error_;
};

}  // namespace

std::uint64_t PlyHeader::count_of(PlyKind kind) const {
    std::uint64_t count = 0;
    for (const auto& element : elements)
        if (element.kind == kind) count += element.count;
    return count;
}

std::uint64_t least_bytes(const PlyElement& element, PlyForm form) {
    std::uint64_t sum = 0;
    for (const auto& property : element.properties) {
        if (form == PlyForm::ascii) {
            sum += 2;  // a digit and a blank
        } else {
            sum += size_of(property.is_list ? property.count_type : property.type);
        }
    }
    return sum;
}

Result<PlyHeader> read_ply_header(std::string_view bytes) { return HeaderReader{bytes}.read(); }

}  // namespace engine
