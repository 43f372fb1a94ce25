#include "model/book/stamp.h"

#include "engine/files/json_text.h"
#include "model/project/project_json.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>

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

void put_stuff(Bytes& bytes,
               const Project& project,
               const Catalogue& catalogue,
               const Piece& piece) {
    bytes.number(static_cast<std::int64_t>(is_of_sheet(piece.kind) ? piece.kind : PieceKind::bar));
    if (piece.section < catalogue.sections.size())
        bytes.words(catalogue.sections[piece.section].id);
    if (piece.stock < project.stock.size()) bytes.words(project.stock[piece.stock].alloy);
    const bool is_stated_panel = piece.kind == PieceKind::panel &&
                                 piece.frame < project.frames.size() &&
                                 piece.stated < project.frames[piece.frame].panels.size();
    if (is_stated_panel) bytes.words(project.frames[piece.frame].panels[piece.stated].material);
    if (piece.kind == PieceKind::gusset) bytes.words(project.shop.gusset_alloy);
}

void put_shape(Bytes& bytes, const Resolved& resolved, const Piece& piece) {
    bytes.number(piece.length);
    for (const auto& end : piece.ends) {
        for (const double slope : end.slope) bytes.ratio(slope);
        for (const Nm back : end.wall_back) bytes.number(back);
    }
    for (const auto& plate : piece.walls()) {
        if (is_of_sheet(piece.kind)) {
            Nm volume_sides = 0;
            for (std::size_t i = 0; i < 3; ++i) {
                const Nm side = plate.box.hi[i] - plate.box.lo[i];
                if (i == plate.normal_axis) bytes.number(side);
                volume_sides += side;
            }
            bytes.number(volume_sides);
        }
        for (const Index outline : {plate.outline, plate.outline_far}) {
            if (outline >= resolved.outlines.size()) continue;
            bytes.corners(resolved.outlines[outline].corners);
            for (const auto& cut_out : resolved.outlines[outline].cut_outs) bytes.corners(cut_out);
        }
    }
}

void put_holes(Bytes& bytes,
               const Catalogue& catalogue,
               const Resolved& resolved,
               const Piece& piece) {
    for (const auto& hole : resolved.holes_of(piece)) {
        bytes.number(hole.wall);
        bytes.number(hole.from_datum);
        bytes.number(hole.gauge);
        bytes.number(hole.diameter);
        bytes.number(static_cast<std::int64_t>(hole.operation));
        if (hole.drill < catalogue.drills.size()) bytes.words(catalogue.drills[hole.drill].name);
        if (hole.tap < catalogue.screws.size()) bytes.words(catalogue.screws[hole.tap].id);
    }
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
    const auto& pattern = resolved.pieces[resolved.marks[mark].pattern];
    Bytes bytes;
    put_stuff(bytes, project, catalogue, pattern);
    put_shape(bytes, resolved, pattern);
    put_holes(bytes, catalogue, resolved, pattern);
    return stamp_of(bytes.text());
}

BookStamps book_stamps(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved) {
    BookStamps stamps{project.name, project_stamp(project), {}};
    for (Index i = 0; i < resolved.marks.size(); ++i) {
        stamps.marks.push_back(
            {resolved.marks[i].name, mark_stamp(project, catalogue, resolved, i)});
    }
    return stamps;
}

std::vector<Index> changed_marks(const std::vector<MarkStamp>& printed,
                                 const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved) {
    std::vector<Index> changed;
    for (Index i = 0; i < resolved.marks.size(); ++i) {
        const MarkStamp now{resolved.marks[i].name, mark_stamp(project, catalogue, resolved, i)};
        if (std::ranges::find(printed, now) == printed.end()) changed.push_back(i);
    }
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
    BookStamps stamps{text_at(*file, "book_of"), text_at(*file, "stamp"), {}};
    for (const auto& row : (*file)["marks"]) {
        stamps.marks.push_back({text_at(row, "mark"), text_at(row, "stamp")});
        if (stamps.marks.back().mark.empty() || stamps.marks.back().stamp.empty()) return refused;
    }
    return stamps;
}

}  // namespace model
