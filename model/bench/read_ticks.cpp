#include "engine/files/json_text.h"
#include "engine/files/whole_file.h"
#include "model/bench/bench.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;
using engine::json_quoted;
using nlohmann::json;

// Far more than a workshop makes, and small enough for sums of nanometres: from memory.
constexpr std::int64_t longest_nm = 1'000'000 * engine::Length::nm_per_mm;
constexpr std::int64_t steepest = 1'000'000'000'000;  // a slope of 1000
constexpr std::int64_t most_alike = 1'000'000;
constexpr std::int64_t last_wall = 3;
constexpr std::uintmax_t most_bytes = 64U << 20U;

std::string found_text(const json& value) {
    if (value.is_object()) return "an object";
    if (value.is_array()) return "a list of " + std::to_string(value.size());
    return engine::in_short(value.dump(-1, ' ', false, json::error_handler_t::replace));
}

// Reads value by value; after the first fault nothing more counts.
class TicksReader {
public:
    engine::Result<BenchTicks> read(const json& root) {
        BenchTicks ticks;
        if (is_object(root) && is_version(root)) {
            knows(root, {"barwright_bench", "pieces"});
            list(root, "pieces", [&](const json& in) {
                ticks.pieces.emplace_back();
                piece(in, ticks.pieces.back());
            });
        }
        if (error_) return *error_;
        std::ranges::sort(ticks.pieces, {}, &PieceTicks::piece);
        const auto twice = std::ranges::adjacent_find(ticks.pieces, {}, &PieceTicks::piece);
        if (twice == ticks.pieces.end()) return ticks;
        return Error{ErrorCode::bad_file, "/pieces",
                     words_of(twice->piece) + " is there twice; keep one of the two"};
    }

private:
    void fail(std::string message, ErrorCode code = ErrorCode::bad_file) {
        if (!error_) error_ = Error{code, where_, std::move(message)};
    }

    void expected(std::string_view what, const json& found) {
        fail("expected " + std::string(what) + ", found " + found_text(found));
    }

    template <class Read>
    void at(const std::string& step, Read read) {
        if (error_) return;
        const auto length = where_.size();
        where_ += step;
        read();
        where_.resize(length);
    }

    bool is_object(const json& in) {
        if (!in.is_object()) expected("an object", in);
        return in.is_object();
    }

    bool is_version(const json& root) {
        constexpr std::string_view key = "barwright_bench";
        if (!root.contains(key)) {
            fail("this is no file of ticks from the bench; it needs " + json_quoted(key));
            return false;
        }
        std::int64_t version = 0;
        number(root, key, 1, 1'000'000, version);
        if (error_) return false;
        if (version == 1) return true;
        fail("the file is of a later version of the program; open it with that one",
             ErrorCode::newer_version);
        return false;
    }

    void knows(const json& in, std::initializer_list<std::string_view> keys) {
        for (const auto& [key, value] : in.items()) {
            if (std::ranges::find(keys, key) != keys.end()) continue;
            fail("the field " + json_quoted(engine::in_short(key)) +
                 " is not known here and would be lost when ticks are saved; take it out, or use "
                 "the program that wrote it");
        }
    }

    // The value under a key; `read` is not called where it may be left out.
    template <class Read>
    void field(const json& in, std::string_view key, bool is_needed, Read read) {
        if (error_) return;
        const auto found = in.find(key);
        if (found != in.end()) {
            at(engine::json_pointer_step(key), [&] { read(*found); });
        } else if (is_needed) {
            fail("the field " + json_quoted(key) + " is missing");
        }
    }

    void text(const json& in, std::string_view key, std::string& out, bool is_needed = true) {
        field(in, key, is_needed, [&](const json& value) { text_value(value, out); });
    }

    void text_value(const json& value, std::string& out) {
        if (!value.is_string()) return expected("a text", value);
        out = value.get_ref<const std::string&>();
    }

    void yes_no(const json& in, std::string_view key, bool& out, bool is_needed) {
        field(in, key, is_needed, [&](const json& value) {
            if (!value.is_boolean()) return expected("true or false", value);
            out = value.get<bool>();
        });
    }

    void number_value(const json& value, std::int64_t least, std::int64_t most, std::int64_t& out) {
        const bool is_whole = value.is_number_integer();
        const bool fits =
            is_whole && (!value.is_number_unsigned() ||
                         value.get<std::uint64_t>() <=
                             static_cast<std::uint64_t>(std::max<std::int64_t>(most, 0)));
        if (!fits || value.get<std::int64_t>() < least || value.get<std::int64_t>() > most) {
            return expected(
                "a whole number from " + std::to_string(least) + " to " + std::to_string(most),
                value);
        }
        out = value.get<std::int64_t>();
    }

    void number(const json& in,
                std::string_view key,
                std::int64_t least,
                std::int64_t most,
                std::int64_t& out,
                bool is_needed = true) {
        field(in, key, is_needed,
              [&](const json& value) { number_value(value, least, most, out); });
    }

    template <class Read>
    void each_of(const json& value, Read read) {
        if (!value.is_array()) return expected("a list", value);
        for (std::size_t i = 0; i < value.size() && !error_; ++i) {
            at("/" + std::to_string(i), [&] { read(value[i]); });
        }
    }

    template <class Read>
    void list(const json& in, std::string_view key, Read read, bool is_needed = true) {
        field(in, key, is_needed, [&](const json& value) { each_of(value, read); });
    }

    template <std::size_t n>
    void row(const json& value, std::int64_t limit, std::array<std::int64_t, n>& out) {
        if (!value.is_array() || value.size() != n) {
            return expected("a list of " + std::to_string(n) + " numbers", value);
        }
        std::size_t i = 0;
        each_of(value, [&](const json& part) { number_value(part, -limit, limit, out[i++]); });
    }

    void piece(const json& in, PieceTicks& out) {
        if (!is_object(in)) return;
        knows(in, {"frame", "kind", "of", "number", "done", "made", "cut_before"});
        text(in, "frame", out.piece.frame);
        text(in, "kind", out.piece.kind);
        list(in, "of", [&](const json& name) { text_value(name, out.piece.of.emplace_back()); });
        std::int64_t count = 1;
        number(in, "number", 1, most_alike, count);
        out.piece.number = static_cast<int>(count);
        list(in, "done", [&](const json& work) { done(work, out); });
        if (!error_ && std::ranges::find(out.done, true) == out.done.end()) {
            fail("nothing is done to this piece; take its line out");
        }
        field(in, "made", true, [&](const json& value) { made(value, out.made); });
        list(
            in, "cut_before",
            [&](const json& value) { cut_before(value, out.cut_before.emplace_back()); }, false);
    }

    void cut_before(const json& in, CutBefore& out) {
        if (!is_object(in)) return;
        knows(in, {"length_nm", "ends"});
        number(in, "length_nm", 0, longest_nm, out.length);
        text(in, "ends", out.ends);
    }

    void done(const json& value, PieceTicks& out) {
        std::string word;
        text_value(value, word);
        const auto work = std::ranges::find_if(
            bench_works, [&](BenchWork each) { return name_of(each) == word; });
        if (work == bench_works.end()) {
            return expected("cut, deburr, drill, fit or set", value);
        }
        out.done[static_cast<std::size_t>(*work)] = true;
    }

    void made(const json& in, MadePiece& out) {
        if (!is_object(in)) return;
        knows(in, {"section", "alloy", "length_nm", "width_nm", "thickness_nm", "right_handed",
                   "ends", "end_cuts", "outline", "outline_far", "holes"});
        text(in, "section", out.section);
        text(in, "alloy", out.alloy);
        number(in, "length_nm", 0, longest_nm, out.length);
        const bool is_sheet = out.section.empty();
        number(in, "width_nm", 0, longest_nm, out.width, is_sheet);
        number(in, "thickness_nm", 0, longest_nm, out.thickness, is_sheet);
        yes_no(in, "right_handed", out.is_right_handed, true);
        text(in, "ends", out.end_words);
        field(in, "end_cuts", false, [&](const json& value) { ends(value, out.ends); });
        field(in, "outline", false, [&](const json& value) { outline(value, out.outline); });
        field(in, "outline_far", false,
              [&](const json& value) { outline(value, out.outline_far); });
        list(
            in, "holes", [&](const json& value) { hole(value, out.holes.emplace_back()); }, false);
        check_faces(out);
    }

    // A far face has the corners of the near one, in step.
    void check_faces(const MadePiece& made) {
        const auto& far = made.outline_far;
        if (error_ || far.corners.empty()) return;
        const auto& near = made.outline;
        const bool is_in_step = near.corners.size() == far.corners.size() &&
                                near.cut_outs.size() == far.cut_outs.size();
        if (!is_in_step) fail("the outlines of the two faces differ in their number of corners");
    }

    void ends(const json& value, std::array<MadeEnd, 2>& out) {
        if (!value.is_array() || value.size() != out.size()) {
            return expected("a list of two ends", value);
        }
        std::size_t i = 0;
        each_of(value, [&](const json& in) {
            auto& end = out[i++];
            if (!is_object(in)) return;
            knows(in, {"slope", "wall_back_nm"});
            field(in, "slope", true, [&](const json& part) { row(part, steepest, end.slope); });
            field(in, "wall_back_nm", true,
                  [&](const json& part) { row(part, longest_nm, end.wall_back); });
        });
    }

    void outline(const json& in, Outline& out) {
        if (!is_object(in)) return;
        knows(in, {"corners_nm", "cut_outs_nm"});
        field(in, "corners_nm", true, [&](const json& value) { corners(value, out.corners); });
        list(
            in, "cut_outs_nm",
            [&](const json& value) { corners(value, out.cut_outs.emplace_back()); }, false);
    }

    void corners(const json& value, Corners& out) {
        each_of(value, [&](const json& corner) { row(corner, longest_nm, out.emplace_back()); });
        if (!error_ && out.size() < 3) expected("three corners or more", value);
    }

    void hole(const json& in, MadeHole& out) {
        if (!is_object(in)) return;
        knows(in, {"wall", "from_datum_nm", "gauge_nm", "diameter_nm", "operation", "tap",
                   "left_open"});
        std::int64_t wall = 0;
        number(in, "wall", 0, last_wall, wall);
        out.wall = static_cast<std::uint8_t>(wall);
        number(in, "from_datum_nm", -longest_nm, longest_nm, out.from_datum);
        number(in, "gauge_nm", -longest_nm, longest_nm, out.gauge);
        number(in, "diameter_nm", 0, longest_nm, out.diameter);
        field(in, "operation", true, [&](const json& value) { operation(value, out.operation); });
        text(in, "tap", out.tap, false);
        yes_no(in, "left_open", out.is_left_open, false);
    }

    void operation(const json& value, HoleOperation& out) {
        std::string word;
        text_value(value, word);
        for (auto i = HoleOperation::drill;;
             i = static_cast<HoleOperation>(static_cast<int>(i) + 1)) {
            if (name_of(i) == word) {
                out = i;
                return;
            }
            if (i == HoleOperation::countersink) break;
        }
        expected("what is done to the hole, as \"drill\" or \"clearance\"", value);
    }

    std::string where_;
    std::optional<Error> error_;
};

Error in_file(const std::filesystem::path& path, Error error) {
    const std::string place = error.where;
    error.where = path.filename().string();
    if (!place.empty()) error.where += ", " + place;
    return error;
}

}  // namespace

engine::Result<BenchTicks> ticks_from_text(std::string_view text) {
    const auto root = engine::read_json(text);
    if (!root) return root.error();
    return TicksReader{}.read(*root);
}

engine::Result<BenchTicks> read_ticks(const std::filesystem::path& path) {
    std::error_code fault;
    const auto status = std::filesystem::symlink_status(path, fault);
    if (status.type() == std::filesystem::file_type::not_found) return BenchTicks{};
    const auto text = engine::read_whole_file(path, most_bytes);
    if (!text) return text.error();
    const auto ticks = ticks_from_text(*text);
    if (!ticks) return in_file(path, ticks.error());
    return ticks;
}

}  // namespace model
