#include "engine/drawing/push_apart.h"

#include <catch2/catch.hpp>

#include <random>

using engine::push_apart;

TEST_CASE("labels that have room stay where they belong", "[engine][drawing]") {
    std::vector<double> places{10, 30, 55};
    push_apart(places, 6.0, 0.0, 100.0);
    CHECK(places == std::vector<double>{10, 30, 55});
}

TEST_CASE("labels that crowd each other share the room around their middle", "[engine][drawing]") {
    std::vector<double> places{50, 51, 52};
    push_apart(places, 6.0, 0.0, 100.0);
    CHECK(places[0] == Approx(45));
    CHECK(places[1] == Approx(51));
    CHECK(places[2] == Approx(57));
}

TEST_CASE("labels keep their order, their gap and the ends", "[engine][drawing]") {
    for (unsigned seed = 0; seed < 200; ++seed) {
        std::mt19937 random(seed);
        CAPTURE(seed);
        std::vector<double> places(1 + random() % 30U);
        for (double& place : places) place = static_cast<double>(random() % 20000U) / 100.0;
        std::sort(places.begin(), places.end());
        push_apart(places, 6.0, 5.0, 195.0);
        CHECK(places.front() >= 5.0 - 1e-9);
        CHECK(places.back() <= 195.0 + 1e-9);
        for (std::size_t i = 1; i < places.size(); ++i)
            CHECK(places[i] - places[i - 1] >= 6.0 - 1e-9);
    }
}

TEST_CASE("where there is no room the gap gives way", "[engine][drawing]") {
    std::vector<double> places(11, 50.0);
    push_apart(places, 30.0, 0.0, 100.0);
    for (std::size_t i = 0; i < places.size(); ++i)
        CHECK(places[i] == Approx(10.0 * static_cast<double>(i)));
}
