// What the readers of scan_mesh.h work with: the bytes, the mesh that grows within its share of
// memory, the progress that may be cancelled, and the first fault.
#pragma once

#include "engine/files/scan_mesh.h"

#include <cassert>
#include <string>

namespace engine {

// Where a function gives false, `error` has the reason.
class ScanReading {
public:
    ScanReading(std::string_view bytes, const ReadProgress& progress);

    std::string_view bytes() const { return bytes_; }
    std::size_t point_count() const { return mesh_.points.size(); }
    std::size_t triangle_count() const { return mesh_.triangles.size(); }
    const ScanPoint& point(std::uint32_t index) const { return mesh_.points[index]; }
    const Error& error() const { return error_; }

    bool fail(std::string where, std::string message);

    // `offset`: how far into the bytes the reader is.
    bool goes_on(std::size_t offset) { return offset < next_call_ || asks(offset); }

    // Asks for memory beside the mesh, before it is taken.
    bool take(std::size_t more_bytes);
    void give_back(std::size_t bytes) { taken_ -= bytes; }

    bool make_room_for_points(std::size_t more) { return make_room(mesh_.points, more); }
    bool make_room_for_triangles(std::size_t more) { return make_room(mesh_.triangles, more); }

    bool add(const ScanPoint& point) {
        if (mesh_.points.size() == mesh_.points.capacity() && !make_room_for_points(1))
            return false;
        mesh_.points.push_back(point);
        return true;
    }
    // Corners may be points that come later, but none may be missing in the end.
    bool add(const ScanTriangle& corners) {
        if (mesh_.triangles.size() == mesh_.triangles.capacity() && !make_room_for_triangles(1))
            return false;
        mesh_.triangles.push_back(corners);
        return true;
    }
    void drop_triangle() { ++mesh_.dropped; }
    void state_metres_and_y_up();

    // Without degenerate triangles and unused points. Error where nothing is left.
    Result<ScanMesh> result() &&;

private:
    template <class Part>
    bool make_room(std::vector<Part>& parts, std::size_t more);
    bool asks(std::size_t offset);
    std::size_t held() const;
    void drop_degenerate();
    void drop_unused_points();
    void measure();

    std::string_view bytes_;
    const ReadProgress& progress_;
    ScanMesh mesh_;
    std::size_t next_call_ = 0;
    std::size_t most_held_;
    std::size_t taken_ = 0;
    Error error_;
};

// The triangles of a polygon or of a fan of them, corner by corner.
class ScanFan {
public:
    explicit ScanFan(ScanReading& reading) : reading_{reading} {}

    bool add(std::uint32_t corner) {
        const bool is_done = count_ < 2 || reading_.add(ScanTriangle{first_, previous_, corner});
        if (count_ == 0) first_ = corner;
        previous_ = corner;
        ++count_;
        return is_done;
    }
    void end() {
        if (count_ < 3) reading_.drop_triangle();
    }

private:
    ScanReading& reading_;
    std::size_t count_ = 0;
    std::uint32_t first_ = 0;
    std::uint32_t previous_ = 0;
};

}  // namespace engine
