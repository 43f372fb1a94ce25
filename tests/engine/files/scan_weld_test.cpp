#include "engine/files/scan_mesh.h"

#include "tests/support/dice.h"
#include "tests/support/mesh_files.h"

#include <catch2/catch.hpp>

#include <bit>
#include <chrono>
#include <cmath>

using namespace engine;

namespace {

constexpr std::uint64_t first_factor = 0x9E3779B97F4A7C15U;
constexpr std::uint64_t second_factor = 0xD6E8FEB86659FD93U;

// Of an odd number, modulo 2^64, by Newton's steps: each doubles the bits that are right.
constexpr std::uint64_t inverse(std::uint64_t odd) {
    std::uint64_t x = odd;
    for (int step = 0; step < 6; ++step) x *= 2 - odd * x;
    return x;
}

// Different points, none with a corner nowhere, that all come to the same high bits where points
// are mixed by multiplying with these factors and shifting by 29 and 32 bits.
std::vector<ScanPoint> points_of_one_slot(std::size_t count) {
    std::vector<ScanPoint> points;
    constexpr float z = 1.5F;
    for (std::uint64_t mixed = 1; points.size() < count; ++mixed) {
        std::uint64_t sum = mixed * inverse(second_factor);
        sum ^= sum >> 32U;
        sum = sum * inverse(second_factor) - std::bit_cast<std::uint32_t>(z);
        sum ^= (sum >> 29U) ^ (sum >> 58U);
        sum *= inverse(first_factor);
        const auto x = std::bit_cast<float>(static_cast<std::uint32_t>(sum));
        const auto y = std::bit_cast<float>(static_cast<std::uint32_t>(sum >> 32U));
        if (std::isfinite(x) && std::isfinite(y)) points.push_back({x, y, z});
    }
    return points;
}

std::vector<ScanPoint> random_points(std::size_t count) {
    tests::Dice dice{1};
    std::vector<ScanPoint> points(count);
    for (auto& point : points) {
        for (auto& at : point) at = static_cast<float>(dice.between(-1'000'000, 1'000'000)) / 64.0F;
    }
    return points;
}

std::string stl_of(const std::vector<ScanPoint>& points) {
    std::string bytes(80, ' ');
    tests::put(bytes, static_cast<std::uint32_t>(points.size() / 3));
    for (std::size_t i = 0; i + 2 < points.size(); i += 3) {
        bytes.append(12, '\0');
        for (std::size_t k = 0; k < 3; ++k) {
            for (const float at : points[i + k]) tests::put(bytes, at);
        }
        bytes.append(2, '\0');
    }
    return bytes;
}

double seconds_to_read(const std::vector<ScanPoint>& points) {
    const auto bytes = stl_of(points);
    const auto begin = std::chrono::steady_clock::now();
    const auto mesh = read_scan_mesh_bytes(bytes, "stl");
    const auto end = std::chrono::steady_clock::now();
    REQUIRE(mesh);
    CHECK(mesh->points.size() > points.size() / 2);
    return std::chrono::duration<double>(end - begin).count();
}

}  // namespace

// With a mix that anybody can reckon back each of them would be looked for behind all the others.
TEST_CASE("points that were chosen to seek one slot are welded as fast as any others", "[scan]") {
    constexpr std::size_t count = 90'000;
    const double usual = seconds_to_read(random_points(count));
    CHECK(seconds_to_read(points_of_one_slot(count)) < 10.0 * usual + 0.3);
}
