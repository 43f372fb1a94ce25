#include "engine/files/whole_file.h"
#include "model/bench/bench.h"
#include "model/schedule/json_lines.h"

namespace model {
namespace {

class TicksWriter {
public:
    explicit TicksWriter(std::string& out) : json_{out} {}

    void write(const BenchTicks& ticks) {
        json_.raw("{\n\"barwright_bench\":1,\n\"pieces\":[");
        bool is_first = true;
        for (const auto& each : ticks.pieces) {
            json_.raw(is_first ? "\n" : ",\n");
            is_first = false;
            piece(each);
        }
        json_.raw("\n]\n}\n");
    }

private:
    void piece(const PieceTicks& ticks) {
        json_.raw("{\"frame\":").text(ticks.piece.frame);
        json_.raw(",\"kind\":").text(ticks.piece.kind).raw(",\"of\":");
        list(ticks.piece.of, [&](const std::string& name) { json_.text(name); });
        number(",\"number\":", ticks.piece.number);
        json_.raw(",\"done\":[");
        bool is_first = true;
        for (const auto work : bench_works) {
            if (!ticks.is_done(work)) continue;
            if (!is_first) json_.raw(",");
            is_first = false;
            json_.word(name_of(work));
        }
        json_.raw("],\"made\":{");
        made(ticks.made);
        json_.raw("}");
        if (!ticks.cut_before.empty()) {
            json_.raw(",\"cut_before\":");
            list(ticks.cut_before, [&](const CutBefore& each) { cut_before(each); });
        }
        json_.raw("}");
    }

    void cut_before(const CutBefore& before) {
        number("{\"length_nm\":", before.length);
        json_.raw(",\"ends\":").text(before.ends).raw("}");
    }

    void made(const MadePiece& made) {
        json_.raw("\"section\":").text(made.section).raw(",\"alloy\":").text(made.alloy);
        number(",\"length_nm\":", made.length);
        if (made.section.empty()) {
            number(",\"width_nm\":", made.width);
            number(",\"thickness_nm\":", made.thickness);
        }
        json_.raw(",\"right_handed\":").raw(made.is_right_handed ? "true" : "false");
        json_.raw(",\"ends\":").text(made.end_words);
        if (made.ends != std::array<MadeEnd, 2>{}) {
            json_.raw(",\"end_cuts\":");
            list(made.ends, [&](const MadeEnd& each) { end(each); });
        }
        if (!made.outline.corners.empty()) outline(",\"outline\":", made.outline);
        if (!made.outline_far.corners.empty()) outline(",\"outline_far\":", made.outline_far);
        if (made.holes.empty()) return;
        json_.raw(",\"holes\":");
        list(made.holes, [&](const MadeHole& each) { hole(each); });
    }

    void end(const MadeEnd& end) {
        json_.raw("{\"slope\":");
        list(end.slope, [&](std::int64_t part) { number("", part); });
        json_.raw(",\"wall_back_nm\":");
        list(end.wall_back, [&](Nm back) { number("", back); });
        json_.raw("}");
    }

    void outline(std::string_view key, const Outline& outline) {
        json_.raw(key).raw("{\"corners_nm\":");
        corners(outline.corners);
        if (!outline.cut_outs.empty()) {
            json_.raw(",\"cut_outs_nm\":");
            list(outline.cut_outs, [&](const Corners& each) { corners(each); });
        }
        json_.raw("}");
    }

    void corners(const Corners& corners) {
        list(corners, [&](const std::array<Nm, 2>& corner) {
            list(corner, [&](Nm part) { number("", part); });
        });
    }

    void hole(const MadeHole& hole) {
        number("{\"wall\":", hole.wall);
        number(",\"from_datum_nm\":", hole.from_datum);
        number(",\"gauge_nm\":", hole.gauge);
        number(",\"diameter_nm\":", hole.diameter);
        json_.raw(",\"operation\":").word(name_of(hole.operation));
        if (!hole.tap.empty()) json_.raw(",\"tap\":").text(hole.tap);
        if (hole.is_left_open) json_.raw(",\"left_open\":true");
        json_.raw("}");
    }

    void number(std::string_view key, std::int64_t value) {
        json_.raw(key).raw(std::to_string(value));
    }

    template <class List, class Write>
    void list(const List& list, Write write) {
        json_.raw("[");
        bool is_first = true;
        for (const auto& each : list) {
            if (!is_first) json_.raw(",");
            is_first = false;
            write(each);
        }
        json_.raw("]");
    }

    JsonLines json_;
};

}  // namespace

std::filesystem::path path_of_ticks(const std::filesystem::path& project_file) {
    auto path = project_file;
    path.replace_extension(".bench.json");
    return path;
}

std::string ticks_text(const BenchTicks& ticks) {
    std::string text;
    TicksWriter(text).write(ticks);
    return text;
}

engine::Result<engine::Done> write_ticks(const std::filesystem::path& path,
                                         const BenchTicks& ticks) {
    return engine::write_whole_file(path, ticks_text(ticks));
}

}  // namespace model
