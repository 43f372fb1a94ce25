#include "engine/files/scan_reading.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace engine {
namespace {

constexpr std::size_t parts_of_memory = 9;  // beside the file itself
constexpr std::size_t small_change = std::size_t{48} << 10U;
constexpr std::size_t bytes_between_calls = std::size_t{256} << 10U;

// No area as far as doubles tell, or a corner that is not finite: with one infinite or undefined
// coordinate the product below is infinite or undefined as well, with finite floats it never is.
bool is_degenerate(const ScanPoint& a, const ScanPoint& b, const ScanPoint& c) {
    const auto along = [&](const ScanPoint& to, std::size_t axis) {
        return static_cast<double>(to[axis]) - static_cast<double>(a[axis]);
    };
    const double bx = along(b, 0), by = along(b, 1), bz = along(b, 2);
    const double cx = along(c, 0), cy = along(c, 1), cz = along(c, 2);
    const double x = by * cz - bz * cy;
    const double y = bz * cx - bx * cz;
    const double z = bx * cy - by * cx;
    const double size = std::abs(x) + std::abs(y) + std::abs(z);
    return !(size > 0.0 && std::isfinite(size));
}

// Which of many things are wanted, and the place of each among the wanted ones.
class Ranks {
public:
    static std::size_t bytes_for(std::size_t count) { return (count + 63) / 64 * 12; }

    explicit Ranks(std::size_t count) : words_((count + 63) / 64) {}

    void want(std::uint32_t index) { words_[index / 64] |= std::uint64_t{1} << (index % 64); }
    bool is_wanted(std::size_t index) const {
        return (words_[index / 64] >> (index % 64) & 1U) != 0;
    }

    // How many are wanted; now `rank` may be asked.
    std::uint32_t count() {
        before_.reserve(words_.size());
        std::uint32_t sum = 0;
        for (const auto word : words_) {
            before_.push_back(sum);
            sum += static_cast<std::uint32_t>(std::popcount(word));
        }
        return sum;
    }
    std::uint32_t rank(std::uint32_t index) const {
        const auto below = words_[index / 64] & ((std::uint64_t{1} << (index % 64)) - 1);
        return before_[index / 64] + static_cast<std::uint32_t>(std::popcount(below));
    }

private:
    std::vector<std::uint64_t> words_;
    std::vector<std::uint32_t> before_;
};

}  // namespace

ScanReading::ScanReading(std::string_view bytes, const ReadProgress& progress)
    : bytes_{bytes},
      progress_{progress},
      most_held_{parts_of_memory * bytes.size() + small_change} {}

bool ScanReading::fail(std::string where, std::string message) {
    error_ = {ErrorCode::bad_file, std::move(where), std::move(message)};
    return false;
}

bool ScanReading::asks(std::size_t offset) {
    next_call_ = offset + bytes_between_calls;
    if (!progress_.go_on || bytes_.empty()) return true;
    const double done = static_cast<double>(offset) / static_cast<double>(bytes_.size());
    if (progress_.go_on(std::min(done, 1.0))) return true;
    error_ = {ErrorCode::cancelled, "", "reading was cancelled"};
    return false;
}

std::size_t ScanReading::held() const {
    return taken_ + mesh_.points.capacity() * sizeof(ScanPoint) +
           mesh_.triangles.capacity() * sizeof(ScanTriangle);
}

bool ScanReading::take(std::size_t more_bytes) {
    if (more_bytes > most_held_ || held() > most_held_ - more_bytes) {
        return fail("",
                    "the file describes far more than a mesh of its size can hold; save the scan "
                    "again as plain triangles, each thing once");
    }
    taken_ += more_bytes;
    return true;
}

template <class Part>
bool ScanReading::make_room(std::vector<Part>& parts, std::size_t more) {
    const std::size_t needed = parts.size() + more;
    if (needed <= parts.capacity()) return true;
    // While they move, the old and the new place are there at once, and both count.
    const std::size_t room = std::max(needed, parts.capacity() + parts.capacity() / 2 + 32);
    if (!take(room * sizeof(Part))) return false;
    give_back(room * sizeof(Part));
    parts.reserve(room);
    return true;
}

template bool ScanReading::make_room(std::vector<ScanPoint>&, std::size_t);
template bool ScanReading::make_room(std::vector<ScanTriangle>&, std::size_t);

void ScanReading::state_metres_and_y_up() {
    mesh_.unit = LengthUnit::metre;
    mesh_.is_y_up = true;
}

void ScanReading::drop_degenerate() {
    const auto& points = mesh_.points;
    const auto kept = std::remove_if(
        mesh_.triangles.begin(), mesh_.triangles.end(), [&](const ScanTriangle& corners) {
            return is_degenerate(points[corners[0]], points[corners[1]], points[corners[2]]);
        });
    mesh_.dropped += static_cast<std::size_t>(mesh_.triangles.end() - kept);
    mesh_.triangles.erase(kept, mesh_.triangles.end());
}

void ScanReading::drop_unused_points() {
    Ranks ranks{mesh_.points.size()};
    for (const auto& corners : mesh_.triangles)
        for (const auto corner : corners) ranks.want(corner);
    const auto count = ranks.count();
    if (count == mesh_.points.size()) return;
    std::size_t next = 0;
    for (std::size_t i = 0; i < mesh_.points.size(); ++i)
        if (ranks.is_wanted(i)) mesh_.points[next++] = mesh_.points[i];
    mesh_.points.resize(count);
    for (auto& corners : mesh_.triangles)
        for (auto& corner : corners) corner = ranks.rank(corner);
}

void ScanReading::measure() {
    mesh_.lo = mesh_.hi = mesh_.points.front();
    for (const auto& point : mesh_.points) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            mesh_.lo[axis] = std::min(mesh_.lo[axis], point[axis]);
            mesh_.hi[axis] = std::max(mesh_.hi[axis], point[axis]);
        }
    }
}

Result<ScanMesh> ScanReading::result() && {
    if (!asks(bytes_.size())) return error_;
    drop_degenerate();
    if (mesh_.triangles.empty()) {
        fail("", mesh_.dropped == 0 ? "the file holds no triangles; save the scan with its surface"
                                    : "none of the file's " + std::to_string(mesh_.dropped) +
                                          " triangles has an area; save the scan again");
        return error_;
    }
    if (!take(Ranks::bytes_for(mesh_.points.size()))) return error_;
    drop_unused_points();
    measure();
    return std::move(mesh_);
}

}  // namespace engine
