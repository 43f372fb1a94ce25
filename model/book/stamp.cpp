#include "model/book/stamp.h"

#include "engine/files/json_text.h"
#include "model/project/project_json.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/tables.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

namespace model {
namespace {

// FNV-1a with 64 bits (the authors' published constants), then folded: the last bits of each byte
// reach all signs.
std::uint64_t hash_of(std::string_view bytes) {
    std::uint64_t h = 0xCBF29CE484222325ULL;
    for (const char c : bytes) {
        h ^= static_cast<unsigned char>(c);
        h *= 0x100000001B3ULL;
    }
    return h ^ (h >> 30U);
}

// Whole numbers and texts one behind the other, so that no two lists give the same bytes.
class Bytes {
public:
    void number(std::int64_t value) { text_ += std::to_string(value) + ";"; }
    void words(std::string_view value) {
        number(static_cast<std::int64_t>(value.size()));
        text_ += value;
    }
    // Slopes and directions; a millionth is far below what a saw can be set to.
    void ratio(double value) { number(std::llround(value * 1e6)); }
    void corners(const Corners& all) {
        number(static_cast<std::int64_t>(all.size()));
        for (const auto& corner : all)
            for (const auto along : corner) number(along);
    }
    const std::string& text() const { return text_; }

private:
    std::string text_;
};

// What is drawn of ends, outline and cut-outs.
void put_shape(Bytes& bytes, const Resolved& resolved, const Piece& piece) {
    for (const auto& end : piece.ends) {
        for (const double slope : end.slope) bytes.ratio(slope);
        for (const Nm back : end.wall_back) bytes.number(back);
    }
    for (const auto& plate : piece.walls()) {
        for (const Index outline : {plate.outline, plate.outline_far}) {
            if (outline >= resolved.outlines.size()) continue;
            bytes.corners(resolved.outlines[outline].corners);
            for (const auto& cut_out : resolved.outlines[outline].cut_outs) bytes.corners(cut_out);
        }
    }
}

// Exact, and as it is shown.
void put_length(Bytes& bytes, const Project& project, engine::Length length) {
    bytes.number(length.nm());
    bytes.words(length_text(project, length));
}

// The head of its page.
void put_cut(Bytes& bytes, const Project& project, const CutRow& row) {
    bytes.words(name_of(row.hand));
    bytes.number(row.quantity);
    bytes.words(row.section);
    bytes.words(row.alloy);
    put_length(bytes, project, row.length);
    put_length(bytes, project, row.width);
    bytes.words(row.end_a);
    bytes.words(row.end_b);
    bytes.words(row.frames);
    bytes.words(row.members);
}

// A line of its drill table. Enumerators go in by their names: their values move when one is added.
void put_drill(Bytes& bytes, const Project& project, const DrillRow& row) {
    bytes.words(row.leg);
    bytes.number(row.hole);
    put_length(bytes, project, row.from_datum);
    put_length(bytes, project, row.gauge);
    put_length(bytes, project, row.diameter);
    bytes.words(row.drill);
    bytes.words(name_of(row.operation));
    bytes.words(row.fastener);
    bytes.words(row.mates_with);
    bytes.words(row.datum_end == TableEnd::left ? "left" : "right");
}

// As Resolved::marks.
std::vector<std::string> stamps_of_marks(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved) {
    std::vector<Bytes> all(resolved.marks.size());
    for (const auto& row : cut_rows(project, catalogue, resolved)) {
        put_cut(all[row.mark], project, row);
        put_shape(all[row.mark], resolved, resolved.pieces[row.pieces.front()]);
    }
    for (const auto& row : drill_rows(project, catalogue, resolved)) {
        all[row.mark].words(name_of(row.hand));
        put_drill(all[row.mark], project, row);
    }
    std::vector<std::string> stamps;
    for (const auto& bytes : all) stamps.push_back(stamp_of(bytes.text()));
    return stamps;
}

// Empty where there is no such text.
std::string text_at(const nlohmann::json& row, const char* key) {
    if (!row.is_object() || !row.contains(key) || !row[key].is_string()) return {};
    return row[key].get<std::string>();
}

}  // namespace

std::string stamp_of(std::string_view bytes) {
    constexpr std::string_view signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    std::uint64_t rest = hash_of(bytes);
    std::string stamp;
    for (std::size_t i = 0; i < 6; ++i) {
        if (i == 3) stamp += '-';
        stamp += signs[rest % 32U];
        rest /= 32U;
    }
    return stamp;
}

std::string project_stamp(const Project& project) { return stamp_of(to_json_text(project)); }

std::string mark_stamp(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved,
                       Index mark) {
    return stamps_of_marks(project, catalogue, resolved)[mark];
}

BookStamps book_stamps(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved) {
    BookStamps stamps{project.name, project_stamp(project), {}};
    auto marks = stamps_of_marks(project, catalogue, resolved);
    for (Index i = 0; i < resolved.marks.size(); ++i)
        stamps.marks.push_back({resolved.marks[i].name, std::move(marks[i])});
    return stamps;
}

std::vector<Index> changed_marks(const std::vector<MarkStamp>& printed,
                                 const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved) {
    const auto now = book_stamps(project, catalogue, resolved).marks;
    std::vector<Index> changed;
    for (Index i = 0; i < now.size(); ++i)
        if (std::ranges::find(printed, now[i]) == printed.end()) changed.push_back(i);
    return changed;
}

std::vector<std::string> marks_gone(const std::vector<MarkStamp>& printed,
                                    const Resolved& resolved) {
    std::vector<std::string> gone;
    for (const auto& was : printed) {
        if (std::ranges::find(resolved.marks, was.mark, &Mark::name) == resolved.marks.end())
            gone.push_back(was.mark);
    }
    return gone;
}

std::string stamps_text(const BookStamps& stamps) {
    std::string text = "{\n  \"book_of\": " + engine::json_quoted(stamps.project) +
                       ",\n  \"stamp_making\": " + std::to_string(stamp_making) +
                       ",\n  \"stamp\": " + engine::json_quoted(stamps.stamp) + ",\n  \"marks\": [";
    for (const auto& [mark, stamp] : stamps.marks) {
        text += &stamp == &stamps.marks.front().stamp ? "\n" : ",\n";
        text += "    {\"mark\": " + engine::json_quoted(mark) +
                ", \"stamp\": " + engine::json_quoted(stamp) + "}";
    }
    return text + (stamps.marks.empty() ? "]\n}\n" : "\n  ]\n}\n");
}

engine::Result<BookStamps> read_stamps(std::string_view text) {
    const auto file = engine::read_json(text);
    if (!file) return file.error();
    const engine::Error refused{engine::ErrorCode::bad_file, "",
                                "this is no file of stamps that `barwright book` wrote"};
    if (!file->is_object() || !file->contains("marks") || !(*file)["marks"].is_array())
        return refused;
    if (!file->contains("stamp_making") || (*file)["stamp_making"] != stamp_making)
        return engine::Error{engine::ErrorCode::bad_file, "stamp_making",
                             "printed by another version of the program: print the book anew"};
    BookStamps stamps{text_at(*file, "book_of"), text_at(*file, "stamp"), {}};
    for (const auto& row : (*file)["marks"]) {
        stamps.marks.push_back({text_at(row, "mark"), text_at(row, "stamp")});
        if (stamps.marks.back().mark.empty() || stamps.marks.back().stamp.empty()) return refused;
    }
    return stamps;
}

}  // namespace model
