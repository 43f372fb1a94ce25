// What later edits make of a piece that is made. The flat at the front is 6 in long and 1 in wide,
// with clearance holes (#18, 0.1695 in) at 1/4 and 3/4 in; figures worked out by hand.
#include "tests/model/bench/bench_job.h"

#include <array>

using model::BenchVerdict;
using model::BenchWork;
using namespace tests;

namespace {

// The holes of the flat at the front, from its datum end.
SmallJob flat_job(engine::Nm length, std::array<engine::Nm, 2> holes) {
    auto job = small_job();
    job.resolved.pieces[flat_front].length = length;
    for (model::Index i = 0; i < 2; ++i) hole_of(job, flat_front, i).from_datum = holes[i];
    return job;
}

void drop_last_hole(SmallJob& job, model::Index piece) { --job.resolved.pieces[piece].hole_count; }

void check(const model::BenchPiece& row, BenchVerdict verdict, const std::string& sentence) {
    CHECK(row.sentence() == sentence);
    CHECK(row.verdict == verdict);
}

model::BenchPiece flat_seen(const SmallJob& before, const SmallJob& after) {
    return seen(after, made(before, flat_front), flat_front);
}

}  // namespace

TEST_CASE("a piece that nothing is done to has no verdict", "[model][bench]") {
    const auto job = small_job();
    check(seen(job, {}, rail), BenchVerdict::nothing_done, "");
}

TEST_CASE("another mark leaves a piece right", "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    job.resolved.marks[1].name = "A7";
    check(seen(job, ticks, rail), BenchVerdict::still_right, "");
    CHECK(seen(job, ticks, rail).mark == "A7");
}

TEST_CASE("less than a saw's tenth of a millimetre leaves a piece right", "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    job.resolved.pieces[rail].length += 100'000;
    check(seen(job, ticks, rail), BenchVerdict::still_right, "");
    job.resolved.pieces[rail].length += 1;
    CHECK(seen(job, ticks, rail).verdict == BenchVerdict::spoiled);
}

TEST_CASE("a piece that is too long is cut at its far end where its holes stay right",
          "[model][bench]") {
    const auto row = flat_seen(flat_job(whole_inches(6), {whole_inches(2), whole_inches(4)}),
                               flat_job(inches_64ths(368), {whole_inches(2), whole_inches(4)}));
    check(row, BenchVerdict::rework, "cut 1/4 in off the far end");
    CHECK(row.rework_begins == BenchWork::cut);
    CHECK(model::next_work(row) == BenchWork::cut);
}

TEST_CASE("a piece is cut at its datum end where that brings its holes to their places",
          "[model][bench]") {
    check(flat_seen(flat_job(whole_inches(6), {whole_inches(2), inches_64ths(288)}),
                    flat_job(whole_inches(5), {whole_inches(1), inches_64ths(224)})),
          BenchVerdict::rework, "cut 1 in off the datum end");
}

TEST_CASE("a piece is cut at both ends where only that brings its holes to their places",
          "[model][bench]") {
    check(flat_seen(flat_job(whole_inches(6), {whole_inches(2), inches_64ths(288)}),
                    flat_job(whole_inches(5), {inches_64ths(112), inches_64ths(272)})),
          BenchVerdict::rework, "cut 1/4 in off the datum end; cut 3/4 in off the far end");
}

TEST_CASE("a flat turned end for end is the same flat", "[model][bench]") {
    const auto before = flat_job(whole_inches(6), {whole_inches(2), inches_64ths(288)});
    check(flat_seen(before, flat_job(whole_inches(6), {inches_64ths(96), whole_inches(4)})),
          BenchVerdict::still_right, "");
    check(flat_seen(before, flat_job(inches_64ths(368), {inches_64ths(96), whole_inches(4)})),
          BenchVerdict::rework,
          "its datum end is now what was the far end; cut 1/4 in off the far end");
}

TEST_CASE("an angle turned over is the same, its mirror image is not", "[model][bench]") {
    const auto before = small_job();
    const auto ticks = made(before, post_left);
    auto over = before;
    auto mirrored = before;
    for (model::Index i = 0; i < 2; ++i) {
        const auto from_far = whole_inches(12) - hole_of(over, post_left, i).from_datum;
        hole_of(over, post_left, i).from_datum = from_far;
        hole_of(over, post_left, i).wall = 1;
        hole_of(mirrored, post_left, i).from_datum = from_far;
    }
    check(seen(over, ticks, post_left), BenchVerdict::still_right, "");
    check(seen(mirrored, ticks, post_left), BenchVerdict::rework,
          "drill 2 holes more, from the datum end: leg a 3/4 in at 1/2 in (#30), leg a 1/4 in at "
          "1/2 in (#30); the hole in leg a 11 1/4 in at 1/2 in is wanted no more and stays open: "
          "deburr it; the hole in leg a 11 3/4 in at 1/2 in is wanted no more and stays open: "
          "deburr it");
    // Read along axes of the other hand, those numbers are the same piece.
    mirrored.resolved.pieces[post_left].run_sense = -1;
    check(seen(mirrored, ticks, post_left), BenchVerdict::still_right, "");
}

TEST_CASE("a piece that is too short is spoiled", "[model][bench]") {
    check(flat_seen(flat_job(whole_inches(6), {whole_inches(2), whole_inches(4)}),
                    flat_job(inches_64ths(400), {whole_inches(2), whole_inches(4)})),
          BenchVerdict::spoiled, "1/4 in too short");
}

TEST_CASE("holes that are missing are drilled, once anything is drilled", "[model][bench]") {
    const auto after = flat_job(whole_inches(6), {whole_inches(2), whole_inches(5)});
    auto before = after;
    drop_last_hole(before, flat_front);
    const auto row = flat_seen(before, after);
    check(row, BenchVerdict::rework,
          "drill 1 hole more, from the datum end: face 5 in at 1/2 in (#18)");
    CHECK(model::next_work(row) == BenchWork::drill);
    const auto only_cut = tick(before, {}, flat_front, BenchWork::cut);
    CHECK(seen(after, only_cut, flat_front).verdict == BenchVerdict::still_right);
}

TEST_CASE("a hole that is wanted no more stays open, and is known when that is done",
          "[model][bench]") {
    const auto before = flat_job(whole_inches(6), {whole_inches(2), whole_inches(5)});
    auto after = before;
    drop_last_hole(after, flat_front);
    const auto ticks = made(before, flat_front);
    const auto row = seen(after, ticks, flat_front);
    check(row, BenchVerdict::rework,
          "the hole in face 5 in at 1/2 in is wanted no more and stays open: deburr it");
    CHECK(row.rework_begins == BenchWork::deburr);
    const auto reworked =
        model::reworked(after.project, after.catalogue, after.resolved, ticks, flat_front);
    REQUIRE(reworked);
    check(seen(after, *reworked, flat_front), BenchVerdict::still_right, "");
    // Wanted again, it is there; where a new one comes beside it, it is in the way.
    check(seen(before, *reworked, flat_front), BenchVerdict::still_right, "");
    check(seen(flat_job(whole_inches(6), {whole_inches(2), inches_64ths(328)}), *reworked,
               flat_front),
          BenchVerdict::spoiled,
          "the hole in face 5 in at 1/2 in, wanted no more, lies within two diameters of a new one "
          "5 1/8 in at 1/2 in");
}

TEST_CASE("a hole moved by less than two diameters spoils a piece", "[model][bench]") {
    const auto before = flat_job(whole_inches(6), {whole_inches(2), whole_inches(5)});
    // Two diameters are 0.339 in: 21/64 is less, 22/64 is not.
    check(flat_seen(before, flat_job(whole_inches(6), {whole_inches(2), inches_64ths(320 + 21)})),
          BenchVerdict::spoiled,
          "the hole in face 5 in at 1/2 in, wanted no more, lies within two diameters of a new one "
          "~5 11/32 in at 1/2 in");
    check(flat_seen(before, flat_job(whole_inches(6), {whole_inches(2), inches_64ths(320 + 22)})),
          BenchVerdict::rework,
          "drill 1 hole more, from the datum end: face 5 11/32 in at 1/2 in (#18); the hole in "
          "face 5 in at 1/2 in is wanted no more and stays open: deburr it");
}

TEST_CASE("a hole that the new cut goes through spoils a piece, one beyond it does not",
          "[model][bench]") {
    const auto before = flat_job(whole_inches(6), {whole_inches(2), inches_64ths(368)});
    auto through = flat_job(inches_64ths(366), {whole_inches(2), 0});
    auto beyond = flat_job(inches_64ths(352), {whole_inches(2), 0});
    drop_last_hole(through, flat_front);
    drop_last_hole(beyond, flat_front);
    check(flat_seen(before, through), BenchVerdict::spoiled,
          "the hole in face 5 3/4 in at 1/2 in, wanted no more, lies in the new cut");
    check(flat_seen(before, beyond), BenchVerdict::rework, "cut 1/2 in off the far end");
}

TEST_CASE("a hole is drilled up and tapped, never made smaller or plain", "[model][bench]") {
    auto job = small_job();
    const auto as_stated = made(job, flat_back);
    auto plain = job;
    hole_of(plain, flat_back, 1).tap = model::no_index;
    hole_of(plain, flat_back, 1).operation = model::HoleOperation::drill;
    check(seen(job, made(plain, flat_back), flat_back), BenchVerdict::rework,
          "tap face 1/2 in at 3/4 in for machine screw 8-32");
    check(seen(plain, as_stated, flat_back), BenchVerdict::spoiled,
          "the hole in face 1/2 in at 3/4 in is tapped for machine screw 8-32, wanted plain");
    auto clear = plain;
    hole_of(clear, flat_back, 1).diameter = hole_of(job, flat_back, 0).diameter;
    hole_of(clear, flat_back, 1).drill = hole_of(job, flat_back, 0).drill;
    check(seen(clear, as_stated, flat_back), BenchVerdict::rework,
          "drill up face 1/2 in at 3/4 in to #18");
    check(seen(plain, made(clear, flat_back), flat_back), BenchVerdict::spoiled,
          "the hole in face 1/2 in at 3/4 in is larger than #29");
}

TEST_CASE("a hole is the same whether it is drilled alone or with its mate", "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    hole_of(job, rail, 2).operation = model::HoleOperation::drill;
    check(seen(job, ticks, rail), BenchVerdict::still_right, "");
}

TEST_CASE("another section or alloy spoils a piece", "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    auto other = job;
    other.project.stock[0].alloy = "6061-T6";
    check(seen(other, ticks, rail), BenchVerdict::spoiled,
          "other material: made of 6063-T52, wanted 6061-T6");
    other = job;
    other.resolved.pieces[rail].section = 1;
    CHECK(seen(other, ticks, rail).what.front() ==
          "other section: made of angle 1 x 1 x 1/8, wanted flat 1 x 1/8");
    CHECK(seen(other, ticks, rail).verdict == BenchVerdict::spoiled);
}

TEST_CASE("what is set must come apart before it is reworked", "[model][bench]") {
    const auto before = flat_job(whole_inches(6), {whole_inches(2), whole_inches(4)});
    const auto ticks = tick(before, made(before, flat_front), flat_front, BenchWork::set);
    check(seen(flat_job(inches_64ths(368), {whole_inches(2), whole_inches(4)}), ticks, flat_front),
          BenchVerdict::rework,
          "it is set: take its fasteners out first, rivets by drilling; cut 1/4 in off the far "
          "end");
    check(seen(flat_job(inches_64ths(400), {whole_inches(2), whole_inches(4)}), ticks, flat_front),
          BenchVerdict::spoiled,
          "1/4 in too short; it is set: its rivets must be drilled out to take it off");
}

TEST_CASE("a square end is cut to a mitre, a mitre to a square one only further in",
          "[model][bench]") {
    const auto square = small_job();
    auto mitred = square;
    mitred.resolved.pieces[rail].ends[1].slope[0] = 1.0;
    const auto only_cut = [](const SmallJob& job) { return tick(job, {}, rail, BenchWork::cut); };
    check(seen(mitred, only_cut(square), rail), BenchVerdict::rework,
          "cut the far end: mitre 45 deg across leg a, long point at the heel");
    auto shorter = square;
    shorter.resolved.pieces[rail].length -= whole_inches(1);
    check(seen(shorter, only_cut(mitred), rail), BenchVerdict::rework, "cut 1 in off the far end");
    CHECK(seen(square, only_cut(mitred), rail).verdict == BenchVerdict::spoiled);
    shorter.resolved.pieces[rail].length += inches_64ths(1);
    CHECK(seen(shorter, only_cut(mitred), rail).verdict == BenchVerdict::spoiled);
}

TEST_CASE("a leg is notched back further, never less", "[model][bench]") {
    auto notched = small_job();
    notched.resolved.pieces[rail].ends[0].wall_back[1] = inches_64ths(32);
    const auto ticks = tick(notched, {}, rail, BenchWork::cut);
    auto further = notched;
    further.resolved.pieces[rail].ends[0].wall_back[1] = inches_64ths(48);
    check(seen(further, ticks, rail), BenchVerdict::rework,
          "cut the datum end: square; leg b notched back 3/4 in");
    check(seen(small_job(), ticks, rail), BenchVerdict::spoiled,
          "the datum end is cut otherwise: wanted square");
}

TEST_CASE("a part of sheet is cut along either side", "[model][bench]") {
    const auto before = small_job();
    auto after = before;
    auto& box = after.resolved.pieces[shim];
    // Narrower on the heel side, which moves the holes towards it.
    box.extents.hi[2] -= inches_64ths(16);
    for (model::Index i = 0; i < 2; ++i) hole_of(after, shim, i).gauge -= inches_64ths(16);
    check(seen(after, made(before, shim), shim), BenchVerdict::rework,
          "cut 1/4 in off the heel side");
    after.resolved.pieces[shim].extents.hi[2] += inches_64ths(24);
    CHECK(seen(after, made(before, shim), shim).verdict == BenchVerdict::spoiled);
}

TEST_CASE("a part of sheet is read along its other side where that saves a cut", "[model][bench]") {
    auto before = small_job();
    const auto set_size = [](SmallJob& job, engine::Nm length, engine::Nm width) {
        auto& piece = job.resolved.pieces[shim];
        piece.length = length;
        piece.extents.hi[0] = piece.extents.lo[0] + length;
        piece.extents.hi[2] = piece.extents.lo[2] + width;
        piece.hole_count = 0;
    };
    auto after = before;
    set_size(before, whole_inches(3), whole_inches(2));
    set_size(after, whole_inches(2), inches_64ths(96));
    check(seen(after, tick(before, {}, shim, BenchWork::cut), shim), BenchVerdict::rework,
          "its length is now measured along its width; cut 1 1/2 in off the far side");
}

TEST_CASE("a part of sheet is cut to an outline that lies in it, not out of it", "[model][bench]") {
    const auto square = small_job();
    auto cut = square;
    const auto in = whole_inches(1);
    cut.resolved.outlines.push_back(
        {.corners = {{0, 0}, {in, 0}, {in, in / 2}, {in / 2, in}, {0, in}}});
    cut.resolved.pieces[shim].plates[0].outline = 0;
    const auto only_cut = [](const SmallJob& job) { return tick(job, {}, shim, BenchWork::cut); };
    check(seen(cut, only_cut(cut), shim), BenchVerdict::still_right, "");
    check(seen(cut, only_cut(square), shim), BenchVerdict::rework, "cut it to its new outline");
    check(seen(square, only_cut(cut), shim), BenchVerdict::spoiled, "cut to another outline");
    auto turned = cut;
    turned.resolved.outlines[0].corners = {{0, 0}, {in, 0}, {in, in}, {in / 2, in}, {0, in / 2}};
    check(seen(turned, only_cut(cut), shim), BenchVerdict::still_right, "");
}
