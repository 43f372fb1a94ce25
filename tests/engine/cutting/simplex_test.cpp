#include "engine/cutting/simplex.h"

#include <catch2/catch.hpp>

#include <random>
#include <vector>

using namespace engine::cutting;

TEST_CASE("the simplex meets needs within limits at the least cost", "[cutting]") {
    // 45 and 36 of a bar of 100: five columns by hand, worth 97 / 2 and (610 - 0) / 2 of them.
    const std::vector<double> needs{97, 610};
    Simplex simplex(needs, {}, std::vector<double>{100.0, 100.0});
    simplex.add_column(1.0, {{0, 2.0}});
    simplex.add_column(1.0, {{1, 2.0}});
    simplex.add_column(1.0, {{0, 1.0}, {1, 1.0}});
    Effort effort(1'000'000, {});
    simplex.minimise(effort);
    CHECK(simplex.objective() == Approx((97.0 + 610.0) / 2.0).margin(1e-3));
    CHECK(simplex.lack() == Approx(0.0).margin(1e-9));
    CHECK(simplex.dual(0) == Approx(0.5));
    CHECK(simplex.dual(1) == Approx(0.5));
}

TEST_CASE("what the limits do not allow is told as lacking", "[cutting]") {
    const std::vector<double> needs{10};
    const std::vector<double> limits{4};
    Simplex simplex(needs, limits, std::vector<double>{50.0});
    simplex.add_column(1.0, {{0, 2.0}, {1, 1.0}});
    Effort effort(1'000'000, {});
    simplex.minimise(effort);
    CHECK(simplex.lack() == Approx(2.0).margin(1e-3));
    CHECK(simplex.objective() == Approx(4.0 + 2.0 * 50.0).margin(1e-2));
    CHECK(simplex.dual(1) < 0.0);
}

TEST_CASE("at the end no column would lower the cost, and costs equal duals times needs",
          "[cutting]") {
    std::mt19937 random(3);
    Effort effort(10'000'000'000, {});
    for (int run = 0; run < 200; ++run) {
        const std::size_t rows = 1 + random() % 30;
        std::vector<double> needs;
        for (std::size_t r = 0; r < rows; ++r)
            needs.push_back(1.0 + static_cast<double>(random() % 9));
        Simplex simplex(needs, {}, std::vector<double>(rows, 5.0));
        for (std::size_t c = 0; c < 4 * rows; ++c) {
            std::vector<Simplex::Entry> entries;
            for (std::size_t r = 0; r < rows; ++r) {
                if (random() % 5 == 0)
                    entries.emplace_back(static_cast<int>(r),
                                         1.0 + static_cast<double>(random() % 3));
            }
            simplex.add_column(1.0 + static_cast<double>(random() % 3), std::move(entries));
            if (c % rows == 0) simplex.minimise(effort);
        }
        simplex.minimise(effort);
        double by_duals = 0;
        for (std::size_t r = 0; r < rows; ++r) {
            CHECK(simplex.dual(r) >= -1e-6);
            CHECK(simplex.dual(r) <= 5.0 + 1e-6);
            by_duals += simplex.dual(r) * needs[r];
        }
        for (std::size_t c = 0; c < simplex.columns(); ++c) CHECK(simplex.reduced_cost(c) >= -1e-6);
        CHECK(simplex.objective() == Approx(by_duals).margin(1e-2));
    }
}

TEST_CASE("what lacks is bought at its own price until lacking is dearer than a column",
          "[cutting]") {
    const std::vector<double> needs{2, 3};
    Simplex simplex(needs, {}, std::vector<double>{1.0, 4.0});
    simplex.add_column(5.0, {{0, 1.0}, {1, 1.0}});
    Effort effort(1'000'000, {});
    simplex.minimise(effort);
    CHECK(simplex.lack() == Approx(5.0).margin(1e-3));
    CHECK(simplex.objective() == Approx(2.0 * 1.0 + 3.0 * 4.0).margin(1e-3));
    simplex.raise_lack_costs(2.0);
    simplex.minimise(effort);
    CHECK(simplex.lack() == Approx(0.0).margin(1e-9));
    CHECK(simplex.objective() == Approx(3.0 * 5.0).margin(1e-3));
}
