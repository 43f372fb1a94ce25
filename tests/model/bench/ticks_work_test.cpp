// Ticking, taking back, going from piece to piece, and names that change.
#include "tests/model/bench/bench_job.h"

#include <tuple>

using model::BenchVerdict;
using model::BenchWork;
using model::WorkState;
using namespace tests;

namespace {

std::vector<model::BenchPiece> rows_of(const SmallJob& job, const model::BenchTicks& ticks) {
    return model::bench_pieces(job.project, job.catalogue, job.resolved, ticks);
}

std::vector<model::Index> order_of(const std::vector<model::BenchPiece>& rows) {
    std::vector<model::Index> order;
    for (const auto& row : rows) order.push_back(row.piece);
    return order;
}

model::PieceName name_of_piece(const SmallJob& job, model::Index piece) {
    return model::piece_names(job.project, job.resolved)[piece];
}

}  // namespace

TEST_CASE("pieces are named by what is stated", "[model][bench]") {
    auto job = small_job();
    auto& pieces = job.resolved.pieces;
    pieces[rail].part = 1;
    const auto names = model::piece_names(job.project, job.resolved);
    CHECK(model::words_of(names[post_left]) == "gate: post left");
    CHECK(model::words_of(names[rail]) == "gate: rail part 2");
    CHECK(model::words_of(names[shim]) == "strap pair: shim at front flat and back flat");
    // Two cleats alike are told apart by number.
    for (const model::Index cleat : {rail, flat_front}) {
        pieces[cleat].kind = model::PieceKind::cleat;
        pieces[cleat].frame = 0;
        pieces[cleat].member = model::no_index;
        pieces[cleat].serves = {0, 2};
    }
    const auto of_cleats = model::piece_names(job.project, job.resolved);
    CHECK(model::words_of(of_cleats[rail]) == "gate: cleat at post left and rail");
    CHECK(model::words_of(of_cleats[flat_front]) == "gate: cleat 2 at post left and rail");
}

TEST_CASE("pieces come in order of mark, hand and frame, with the work that each needs",
          "[model][bench]") {
    auto job = small_job();
    job.resolved.pieces[rail].hole_count = 0;
    const auto rows = rows_of(job, tick(job, {}, rail, BenchWork::cut));
    CHECK(order_of(rows) ==
          std::vector<model::Index>{post_left, post_right, rail, flat_front, flat_back, shim});
    CHECK(rows[2].state(BenchWork::cut) == WorkState::done);
    CHECK(rows[2].state(BenchWork::deburr) == WorkState::open);
    CHECK(rows[2].state(BenchWork::drill) == WorkState::not_needed);
    CHECK(rows[0].state(BenchWork::drill) == WorkState::open);
    job.resolved.fasteners.clear();
    CHECK(rows_of(job, {})[0].state(BenchWork::set) == WorkState::not_needed);
    CHECK_FALSE(
        model::ticked(job.project, job.catalogue, job.resolved, {}, rail, BenchWork::drill));
    CHECK_FALSE(model::ticked(job.project, job.catalogue, job.resolved, {}, rail, BenchWork::set));
}

TEST_CASE("one goes from piece to piece with the same work to do next", "[model][bench]") {
    const auto job = small_job();
    auto ticks = tick(job, {}, post_left, BenchWork::cut);
    ticks = tick(job, ticks, rail, BenchWork::cut);
    auto rows = rows_of(job, ticks);
    // Left and rail, the places 0 and 2, are to be deburred; the other four to be cut.
    const auto next = [&](BenchWork work, std::optional<std::size_t> from,
                          model::Seek seek = model::Seek::forward) {
        return model::next_piece(rows, work, from, seek);
    };
    CHECK(next(BenchWork::cut, std::nullopt) == 1U);
    CHECK(next(BenchWork::cut, 1U) == 3U);
    CHECK(next(BenchWork::cut, 5U) == 1U);
    CHECK(next(BenchWork::deburr, std::nullopt) == 0U);
    CHECK(next(BenchWork::deburr, 0U) == 2U);
    CHECK(next(BenchWork::deburr, 2U) == 0U);
    CHECK(next(BenchWork::deburr, std::nullopt, model::Seek::backward) == 2U);
    CHECK(next(BenchWork::cut, 1U, model::Seek::backward) == 5U);
    CHECK_FALSE(next(BenchWork::drill, std::nullopt));
    CHECK_FALSE(model::next_piece({}, BenchWork::cut, std::nullopt));
    ticks = tick(job, ticks, rail, BenchWork::deburr);
    rows = rows_of(job, ticks);
    CHECK(next(BenchWork::drill, 2U) == 2U);
}

TEST_CASE("a finished piece has no next work, a spoiled one is made anew", "[model][bench]") {
    auto job = small_job();
    model::BenchTicks ticks;
    for (const auto work : model::bench_works) ticks = tick(job, ticks, rail, work);
    CHECK_FALSE(model::next_work(seen(job, ticks, rail)));
    job.resolved.pieces[rail].length += whole_inches(1);
    CHECK(model::next_work(seen(job, ticks, rail)) == BenchWork::cut);
    const auto name = name_of_piece(job, rail);
    CHECK_FALSE(model::reworked(job.project, job.catalogue, job.resolved, ticks, rail));
    CHECK(seen(job, model::put_away(ticks, name), rail).verdict == BenchVerdict::nothing_done);
}

TEST_CASE("a tick is taken back; nothing is left of a piece without any", "[model][bench]") {
    const auto job = small_job();
    const auto name = name_of_piece(job, rail);
    const auto cut = tick(job, {}, rail, BenchWork::cut);
    const auto both = tick(job, cut, rail, BenchWork::drill);
    CHECK(both.pieces[0].made.holes.size() == 4);
    CHECK(model::taken_back(both, name, BenchWork::drill) == cut);
    CHECK(model::taken_back(cut, name, BenchWork::cut) == model::BenchTicks{});
    CHECK(model::taken_back({}, name, BenchWork::cut) == model::BenchTicks{});
    CHECK(tick(job, both, rail, BenchWork::drill) == both);
}

TEST_CASE("a piece to be reworked takes no tick until that is done, and is then put on again",
          "[model][bench]") {
    auto job = small_job();
    auto ticks = tick(job, {}, rail, BenchWork::cut);
    ticks = tick(job, ticks, rail, BenchWork::deburr);
    job.resolved.pieces[rail].length -= whole_inches(1);
    const auto refused =
        model::ticked(job.project, job.catalogue, job.resolved, ticks, rail, BenchWork::drill);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where == "gate: rail");
    const auto done = model::reworked(job.project, job.catalogue, job.resolved, ticks, rail);
    REQUIRE(done);
    const auto row = seen(job, *done, rail);
    CHECK(row.verdict == BenchVerdict::still_right);
    CHECK(row.state(BenchWork::cut) == WorkState::done);
    CHECK(row.state(BenchWork::deburr) == WorkState::open);
}

TEST_CASE("drilling after it is read otherwise tells the holes by the new reading",
          "[model][bench]") {
    auto job = small_job();
    job.resolved.pieces[flat_front].ends[0].slope[0] = 0.5;
    auto ticks = tick(job, {}, flat_front, BenchWork::cut);
    // Turned end for end; the slope then recedes the other way across.
    std::swap(job.resolved.pieces[flat_front].ends[0], job.resolved.pieces[flat_front].ends[1]);
    job.resolved.pieces[flat_front].ends[1].slope[0] = -0.5;
    ticks = tick(job, ticks, flat_front, BenchWork::drill);
    CHECK(seen(job, ticks, flat_front).verdict == BenchVerdict::still_right);
    hole_of(job, flat_front, 0).from_datum += whole_inches(2);
    CHECK(seen(job, ticks, flat_front).verdict == BenchVerdict::rework);
}

TEST_CASE("ticks of a piece that is gone are kept and listed", "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    CHECK(model::left_over(job.project, job.resolved, ticks).empty());
    job.project.frames[0].members[2].name = "beam";
    CHECK(model::left_over(job.project, job.resolved, ticks) == ticks.pieces);
    CHECK(seen(job, ticks, rail).verdict == BenchVerdict::nothing_done);
}

TEST_CASE("ticks follow a name that is changed, and changed back", "[model][bench]") {
    auto job = small_job();
    auto ticks = made(job, rail);
    ticks = tick(job, ticks, shim, BenchWork::cut);
    const auto before = job.project;
    job.project.frames[0].members[2].name = "beam";
    const auto followed = model::with_names_followed(ticks, before, job.project);
    CHECK(seen(job, followed, rail).verdict == BenchVerdict::still_right);
    CHECK(model::left_over(job.project, job.resolved, followed).empty());
    CHECK(model::with_names_followed(followed, job.project, before) == ticks);
    auto other_frame = before;
    other_frame.frames[1].name = "a pair";
    job.project = other_frame;
    CHECK(seen(job, model::with_names_followed(ticks, before, other_frame), shim).verdict ==
          BenchVerdict::still_right);
    // Two names exchanged are no name changed.
    auto exchanged = before;
    std::swap(exchanged.frames[0].members[0].name, exchanged.frames[0].members[2].name);
    CHECK(model::with_names_followed(ticks, before, exchanged) == ticks);
}

TEST_CASE("several names that were changed are followed, what took a piece's place is not",
          "[model][bench]") {
    auto job = small_job();
    const auto ticks = made(job, rail);
    const auto before = job.project;
    auto& members = job.project.frames[0].members;
    members[0].name = "left upright";
    members[2].name = "beam";
    const auto followed = model::with_names_followed(ticks, before, job.project);
    CHECK(seen(job, followed, rail).verdict == BenchVerdict::still_right);
    CHECK(model::with_names_followed(followed, job.project, before) == ticks);
    members[2].turned = !members[2].turned;  // another one that has its place
    const auto renamed = model::with_names_followed(ticks, before, job.project);
    CHECK(seen(job, renamed, rail).verdict == BenchVerdict::nothing_done);
}

TEST_CASE("a name that ticks left over bear already is exchanged with them", "[model][bench]") {
    // One name before that of the rail in order, one behind it.
    const std::string other = GENERATE("beam", "upright");
    CAPTURE(other);
    auto job = small_job();
    const auto before = job.project;
    auto ticks = made(job, rail);
    ticks.pieces.push_back(ticks.pieces.front());
    ticks.pieces.back().piece.of = {other};
    ticks.pieces.back().done = {true, false, false, false, false};
    std::ranges::sort(ticks.pieces, {}, &model::PieceTicks::piece);
    job.project.frames[0].members[2].name = other;
    const auto followed = model::with_names_followed(ticks, before, job.project);
    REQUIRE(followed.pieces.size() == 2);
    CHECK(seen(job, followed, rail).state(BenchWork::drill) == WorkState::done);
    CHECK(model::left_over(job.project, job.resolved, followed).size() == 1);
}

TEST_CASE("nothing is done to a piece before it is cut, and nothing set before it is drilled",
          "[model][bench]") {
    const auto job = small_job();
    const auto before = [&](const model::BenchTicks& ticks, BenchWork work) {
        return model::needed_before(seen(job, ticks, post_left), work);
    };
    CHECK_FALSE(before({}, BenchWork::cut));
    for (const auto work : {BenchWork::deburr, BenchWork::drill, BenchWork::fit, BenchWork::set})
        CHECK(before({}, work) == BenchWork::cut);
    auto ticks = tick(job, {}, post_left, BenchWork::cut);
    CHECK_FALSE(before(ticks, BenchWork::drill));
    // Match-drilled holes come once it is fitted.
    CHECK_FALSE(before(ticks, BenchWork::fit));
    CHECK(before(ticks, BenchWork::set) == BenchWork::drill);
    ticks = tick(job, ticks, post_left, BenchWork::drill);
    CHECK_FALSE(before(ticks, BenchWork::set));
}

TEST_CASE("where no other piece is ready it is said what is to be done first", "[model][bench]") {
    const auto job = small_job();
    auto rows = rows_of(job, {});
    CHECK(model::words_of_none_ready(rows, BenchWork::drill, 0) ==
          "no other piece is ready to be drilled: cut " + rows[1].mark + ", " + rows[1].words +
              ", first");
    model::BenchTicks ticks;
    for (const auto& row : rows) ticks = tick(job, ticks, row.piece, BenchWork::cut);
    rows = rows_of(job, ticks);
    CHECK(model::words_of_none_ready(rows, BenchWork::cut, 0) == "every piece is cut");
    CHECK_THAT(model::words_of_none_ready(rows, BenchWork::drill, std::nullopt),
               Catch::StartsWith("no other piece is ready to be drilled: deburr "));
}
