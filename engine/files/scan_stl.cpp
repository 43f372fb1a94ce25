// STL: the faces of a solid, each with its own three corners. Format from memory (common practice;
// there is no standard): binary is 80 bytes of anything, a count, and 50 bytes a triangle.
#include "engine/files/json_text.h"
#include "engine/files/scan_bytes.h"
#include "engine/files/scan_readers.h"
#include "engine/files/scan_text.h"
#include "engine/files/scan_weld.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace engine {
namespace {

constexpr std::size_t header_bytes = 84;
constexpr std::size_t triangle_bytes = 50;
constexpr std::size_t normal_bytes = 12;

std::uint64_t stated_triangles(std::string_view bytes) {
    return value_at<std::uint32_t>(bytes.data() + 80, ByteOrder::little);
}

bool is_word(std::string_view word, std::string_view wanted) {
    const auto is_same = [](char a, char b) { return (a >= 'A' && a <= 'Z' ? a + 32 : a) == b; };
    return std::equal(word.begin(), word.end(), wanted.begin(), wanted.end(), is_same);
}

// Adds triangles by their corners' positions.
class StlMesh {
public:
    explicit StlMesh(ScanReading& reading) : reading_{reading}, welder_{reading} {}

    // A closed surface has half as many points as triangles.
    bool expect(std::size_t triangles) {
        return reading_.make_room_for_triangles(triangles) && welder_.expect(triangles / 2) &&
               reading_.make_room_for_points(triangles / 2);
    }
    void prepare(const std::array<ScanPoint, 3>& corners) const {
        for (const auto& corner : corners) welder_.prepare(corner);
    }
    bool add(const std::array<ScanPoint, 3>& corners) {
        ScanTriangle triangle{};
        for (std::size_t i = 0; i < 3; ++i) {
            auto point = corners[i];
            for (auto& coordinate : point) {
                if (!std::isfinite(coordinate)) return drop();
                coordinate += 0.0F;  // minus nought is nought
            }
            if (!welder_.find(point, triangle[i])) return false;
        }
        return reading_.add(triangle);
    }

private:
    bool drop() {
        reading_.drop_triangle();
        return true;
    }

    ScanReading& reading_;
    PointWelder welder_;
};

bool has_right_length(ScanReading& reading) {
    const auto bytes = reading.bytes();
    if (bytes.size() < header_bytes)
        return reading.fail("", "too short for an STL file; save the scan again");
    const auto stated = stated_triangles(bytes);
    const auto there = (bytes.size() - header_bytes) / triangle_bytes;
    if (stated == there) return true;  // less than a triangle more is left by some programs
    return reading.fail("", "the file says it has " + std::to_string(stated) +
                                " triangles but holds " + std::to_string(there) +
                                "; it is cut off or damaged, so save the scan again");
}

std::array<ScanPoint, 3> corners_at(const char* triangle) {
    std::array<ScanPoint, 3> corners{};
    for (std::size_t c = 0; c < 3; ++c)
        for (std::size_t axis = 0; axis < 3; ++axis)
            corners[c][axis] =
                value_at<float>(triangle + normal_bytes + 12 * c + 4 * axis, ByteOrder::little);
    return corners;
}

bool read_binary(ScanReading& reading) {
    if (!has_right_length(reading)) return false;
    const auto bytes = reading.bytes();
    const auto count = static_cast<std::size_t>(stated_triangles(bytes));
    StlMesh mesh{reading};
    if (!mesh.expect(count)) return false;
    constexpr std::size_t triangles_ahead = 8;  // welding waits for memory above all
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t offset = header_bytes + i * triangle_bytes;
        const char* const triangle = bytes.data() + offset;
        if (i + triangles_ahead < count)
            mesh.prepare(corners_at(triangle + triangles_ahead * triangle_bytes));
        if (!reading.goes_on(offset) || !mesh.add(corners_at(triangle))) return false;
    }
    return true;
}

// solid NAME, then facets: facet normal X Y Z, outer loop, three times vertex X Y Z, endloop,
// endfacet; then endsolid NAME. More solids may follow.
class AsciiStl {
public:
    explicit AsciiStl(ScanReading& reading)
        : reading_{reading}, text_{reading.bytes()}, mesh_{reading} {}

    bool read() {
        // No less than that many bytes make a facet in practice; more facets make it grow.
        constexpr std::size_t usual_facet_bytes = 150;
        if (!mesh_.expect(reading_.bytes().size() / usual_facet_bytes)) return false;
        text_.skip_space();
        while (!text_.is_at_end()) {
            if (!wants("solid")) return false;
            text_.skip_line();
            if (!read_facets()) return false;
            text_.skip_line();
            text_.skip_space();
        }
        return true;
    }

private:
    bool fail(std::string message) {
        return reading_.fail("line " + std::to_string(text_.line()), std::move(message));
    }

    bool wants(std::string_view wanted) {
        text_.skip_space();
        if (text_.takes_word(wanted)) return true;
        if (is_word(text_.next_word(), wanted)) {
            text_.word();
            return true;
        }
        const auto found = text_.next_word();
        const auto instead =
            found.empty() ? "the file ends" : "there is " + json_quoted(in_short(found, 30));
        return fail("\"" + std::string(wanted) + "\" belongs here but " + instead +
                    "; the file is cut off or damaged, so save the scan again");
    }

    // Up to and with "endsolid".
    bool read_facets() {
        for (;;) {
            text_.skip_space();
            if (!reading_.goes_on(text_.offset())) return false;
            if (is_word(text_.next_word(), "endsolid")) {
                text_.word();
                return true;
            }
            if (!read_facet()) return false;
        }
    }

    bool read_facet() {
        if (!wants("facet") || !wants("normal")) return false;
        for (int i = 0; i < 3; ++i) {  // may be anything: it follows from the corners
            text_.skip_space();
            text_.word();
        }
        std::array<ScanPoint, 3> corners{};
        if (!wants("outer") || !wants("loop")) return false;
        for (auto& corner : corners)
            if (!wants("vertex") || !read_point(corner)) return false;
        return wants("endloop") && wants("endfacet") && mesh_.add(corners);
    }

    bool read_point(ScanPoint& point) {
        for (auto& coordinate : point) {
            text_.skip_space();
            if (!text_.number(coordinate)) return fail(no_number(text_.next_word()));
        }
        return true;
    }

    ScanReading& reading_;
    ScanText text_;
    StlMesh mesh_;
};

}  // namespace

bool is_binary_stl(std::string_view bytes) {
    return bytes.size() >= header_bytes &&
           bytes.size() == header_bytes + triangle_bytes * stated_triangles(bytes);
}

bool is_ascii_stl(std::string_view bytes) {
    ScanText text{bytes};
    text.skip_space();
    if (!is_word(text.word(), "solid")) return false;
    text.skip_line();
    text.skip_space();
    const auto next = text.next_word();
    return is_word(next, "facet") || is_word(next, "endsolid");
}

bool read_stl(ScanReading& reading) {
    const auto bytes = reading.bytes();
    if (!is_binary_stl(bytes) && is_ascii_stl(bytes)) return AsciiStl{reading}.read();
    return read_binary(reading);
}

}  // namespace engine
