// OBJ: text, a statement a line; of its statements only v (points) and f (polygons) are read.
// Format from memory (common practice after the format's published description of the 1990s).
#include "engine/files/json_text.h"
#include "engine/files/scan_readers.h"
#include "engine/files/scan_text.h"

#include <algorithm>

namespace engine {
namespace {

class ObjReader {
public:
    explicit ObjReader(ScanReading& reading) : reading_{reading}, text_{reading.bytes()} {}

    bool read() {
        constexpr std::size_t usual_line_bytes = 36;
        const std::size_t lines = reading_.bytes().size() / usual_line_bytes;
        if (!reading_.make_room_for_points(lines / 3) ||
            !reading_.make_room_for_triangles(lines * 2 / 3))
            return false;
        while (!text_.is_at_end()) {
            if (!reading_.goes_on(text_.offset())) return false;
            text_.skip_blanks();
            if (!read_statement(text_.word())) return false;
            text_.skip_line();
        }
        return has_what_faces_want();
    }

private:
    bool fail(std::size_t line, std::string message) {
        return reading_.fail("line " + std::to_string(line), std::move(message));
    }

    bool read_statement(std::string_view keyword) {
        if (keyword == "v") return read_point();
        if (keyword == "f") return read_face();
        return true;
    }

    // A weight or a colour may follow.
    bool read_point() {
        ScanPoint point{};
        for (auto& coordinate : point) {
            text_.skip_blanks();
            if (!text_.number(coordinate)) return fail(text_.line(), no_number(text_.next_word()));
        }
        return reading_.add(point);
    }

    bool read_face() {
        ScanFan fan{reading_};
        for (;;) {
            text_.skip_blanks();
            if (text_.is_at_line_end() || text_.next_word().front() == '#') break;
            std::uint32_t corner = 0;
            if (!read_corner(corner) || !fan.add(corner)) return false;
        }
        fan.end();
        return true;
    }

    // POINT, POINT/TEXTURE, POINT//NORMAL or POINT/TEXTURE/NORMAL.
    bool read_corner(std::uint32_t& corner) {
        const auto whole = text_.next_word();
        std::int64_t index = 0;
        std::int64_t ignored = 0;
        bool is_good = text_.leading_integer(index);
        if (is_good && text_.takes('/')) {
            const bool has_texture = text_.leading_integer(ignored);
            if (text_.takes('/')) {
                is_good = text_.leading_integer(ignored);
            } else {
                is_good = has_texture;
            }
        }
        if (!is_good || !text_.word().empty()) {
            return fail(text_.line(), json_quoted(in_short(whole, 30)) +
                                          " is not a corner of a face, as 7, 7/1, 7//2 or 7/1/2");
        }
        return find(index, corner);
    }

    // Counted from 1; below nought from the last point back.
    bool find(std::int64_t index, std::uint32_t& corner) {
        const auto count = static_cast<std::int64_t>(reading_.point_count());
        const std::int64_t from_nought = index > 0 ? index - 1 : count + index;
        constexpr auto most = static_cast<std::int64_t>(most_scan_bytes);
        if (index == 0 || from_nought < 0 || from_nought >= most) return no_such_point(index);
        if (from_nought >= count && index > furthest_) {  // it may still come
            furthest_ = index;
            furthest_line_ = text_.line();
        }
        corner = static_cast<std::uint32_t>(from_nought);
        return true;
    }

    bool no_such_point(std::int64_t index) {
        return fail(text_.line(), "a face refers to point " + std::to_string(index) +
                                      ", which is not there; save the scan again");
    }

    bool has_what_faces_want() {
        const auto count = reading_.point_count();
        if (furthest_ > static_cast<std::int64_t>(count)) {
            return fail(furthest_line_, "a face refers to point " + std::to_string(furthest_) +
                                            " but the file has " + std::to_string(count) +
                                            "; it is cut off or damaged, so save the scan again");
        }
        if (count > 0 && reading_.triangle_count() == 0) {
            return reading_.fail("",
                                 "the file holds points but no faces; make a mesh of them in "
                                 "the scanning program and save that");
        }
        return true;
    }

    ScanReading& reading_;
    ScanText text_;
    std::int64_t furthest_ = 0;  // the highest point that a face named before it came
    std::size_t furthest_line_ = 0;
};

}  // namespace

bool is_obj(std::string_view bytes) {
    constexpr std::array keywords = {"v", "vn", "vt", "f", "o", "g", "s", "mtllib", "usemtl"};
    ScanText text{bytes};
    for (;;) {
        text.skip_space();
        const auto word = text.word();
        if (!word.starts_with("#"))
            return std::find(keywords.begin(), keywords.end(), word) != keywords.end();
        text.skip_line();
    }
}

bool read_obj(ScanReading& reading) { return ObjReader{reading}.read(); }

}  // namespace engine
