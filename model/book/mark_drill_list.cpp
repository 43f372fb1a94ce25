#include "model/book/mark_drill_list.h"

#include "engine/drawing/lettering.h"
#include "model/book/letter_sizes.h"
#include "model/book/mark_signs.h"
#include "model/schedule/decimal_inches.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace model {
namespace {

using engine::LetterWeight;

constexpr double number_height = 6.3;
constexpr double leg_size = 4.0;
constexpr double sign_room = 8.0;
constexpr double word_height = 4.4;
constexpr double box_room = 6.0;
constexpr double hole_room = 6.5;
constexpr double hole_gap = 1.5;  // behind the number of a hole
constexpr double column_gap = 2.5;

bool is_same_drill(const DrillRow& a, const DrillRow& b) {
    return a.operation == b.operation && a.drill == b.drill && a.fastener == b.fastener;
}

// One setting of fence and drill for one leg.
bool is_same_setting(const DrillRow& a, const DrillRow& b) {
    return a.setup == b.setup && a.leg == b.leg && is_same_drill(a, b);
}

class Writer {
public:
    Writer(const Project& project, const MarkFacts& facts, double width)
        : project_{project}, facts_{facts}, width_{width} {}

    std::vector<ListedLine> lines() && {
        const auto& rows = facts_.drills;
        if (rows.empty()) return {line_of("No holes.", plain_letters, word_height)};
        is_alike_ = std::all_of(rows.begin(), rows.end(), [&](const DrillRow& row) {
            return is_same_drill(row, rows.front());
        });
        if (is_alike_) {
            write_drill(rows.front(), "All holes: ");
            lines_.back().keeps_with_next = false;
            for (auto& line : lines_) line.tells_all = true;
        }
        for (std::size_t from = 0; from < rows.size();) {
            std::size_t to = from + 1;
            while (to < rows.size() && is_same_setting(rows[from], rows[to])) ++to;
            write_setting(rows[from]);
            write_holes(from, to);
            from = to;
        }
        return std::move(lines_);
    }

private:
    static ListedLine line_of(std::string words, double size, double height) {
        return {.height = height, .texts = {{0.0, std::move(words), {.size = size}}}};
    }

    void write_wrapped(std::string_view words, bool tells_mates = false) {
        for (auto& part : wrapped_lines(words, plain_letters, width_)) {
            lines_.push_back(line_of(std::move(part), plain_letters, word_height));
            lines_.back().keeps_with_next = true;
            lines_.back().tells_mates = tells_mates;
        }
    }

    // "fence 3/8" in large letters, and beside it the leg and how it lies.
    void write_setting(const DrillRow& row) {
        ListedLine head = line_of("fence " + length_text(project_, row.gauge), working_letters,
                                  number_height + 1.8);
        auto& words = head.texts.front();
        words.lettering.weight = LetterWeight::bold;
        const double leg_at =
            engine::text_width(words.words, working_letters, LetterWeight::bold) + 3.0;
        head.texts.push_back({leg_at, row.leg, {.size = leg_size}});
        const double after = leg_at + engine::text_width(row.leg, leg_size) + 3.0;
        const std::string lies = "gauge " + decimal_mm(row.gauge) + " mm; datum end at the " +
                                 (row.datum_end == TableEnd::left ? "left" : "right");
        const bool has_room = after + engine::text_width(lies, small_letters) + sign_room <= width_;
        if (has_room) head.texts.push_back({after, lies, {.size = small_letters}});
        head.has_rule = true;
        head.keeps_with_next = true;
        head.hole = row.pattern_hole;
        lines_.push_back(std::move(head));
        if (!has_room) write_wrapped(lies);
        if (!is_alike_) write_drill(row, "");
    }

    void write_drill(const DrillRow& row, const std::string& before) {
        std::string words = before + work_words(row) + ", " + decimal_inches(row.diameter) +
                            " in = " + decimal_mm(row.diameter) + " mm";
        if (!row.fastener.empty()) words += "; " + row.fastener;
        write_wrapped(words);
    }

    // Where the columns of the holes begin, mm.
    struct Columns {
        double value = box_room + hole_room;
        double exact = 0.0;
        double mates = 0.0;
    };

    Columns columns_of(std::size_t from, std::size_t to) const {
        double widest = 0.0;
        double exact_width = 0.0;
        Columns columns;
        for (auto i = from; i < to; ++i) {
            const auto& row = facts_.drills[i];
            columns.value =
                std::max(columns.value,
                         box_room + engine::text_width(hole_of(row), plain_letters) + hole_gap);
            widest = std::max(
                widest, engine::text_width(length_text(project_, row.from_datum), working_letters));
            exact_width = std::max(exact_width, engine::text_width(exact_of(row), small_letters));
        }
        columns.exact = columns.value + widest + column_gap;
        columns.mates = columns.exact + (exact_width > 0.0 ? exact_width + column_gap : 0.0);
        return columns;
    }

    void write_holes(std::size_t from, std::size_t to) {
        const auto columns = columns_of(from, to);
        std::string_view last;
        for (auto i = from; i < to; ++i) {
            const auto& row = facts_.drills[i];
            auto line = hole_line(row, columns);
            const std::string mates = mates_of(row);
            const bool has_room =
                columns.mates + engine::text_width(mates, plain_letters) <= width_;
            if (has_room) line.texts.push_back({columns.mates, mates, {.size = plain_letters}});
            if (!has_room && row.mates_with != last) write_wrapped(mates, true);
            line.needs_mates = !has_room && !mates.empty();
            lines_.push_back(std::move(line));
            last = row.mates_with;
        }
    }

    ListedLine hole_line(const DrillRow& row, const Columns& columns) const {
        ListedLine line{.height = number_height, .texts = {}, .has_box = true};
        line.texts.push_back({box_room, hole_of(row), {.size = plain_letters}});
        line.texts.push_back(
            {columns.value, length_text(project_, row.from_datum), {.size = working_letters}});
        if (const auto exact = exact_of(row); !exact.empty())
            line.texts.push_back({columns.exact, exact, {.size = small_letters}});
        return line;
    }

    // In millimetres, unless the tape says the same already.
    std::string exact_of(const DrillRow& row) const {
        std::string exact = decimal_mm(row.from_datum);
        return exact == length_text(project_, row.from_datum) ? std::string() : exact + " mm";
    }

    static std::string hole_of(const DrillRow& row) { return "h" + std::to_string(row.hole); }

    static std::string mates_of(const DrillRow& row) {
        return row.mates_with.empty() ? std::string() : "meets " + row.mates_with;
    }

    const Project& project_;
    const MarkFacts& facts_;
    double width_;
    bool is_alike_ = false;  // drilled by one drill for one fastener, which is said once
    std::vector<ListedLine> lines_;
};

}  // namespace

std::vector<ListedLine> mark_drill_list(const Project& project,
                                        const MarkFacts& facts,
                                        double width) {
    return Writer(project, facts, width).lines();
}

std::vector<ListedLine> told_again(const std::vector<ListedLine>& list, std::size_t next) {
    if (next == 0 || next >= list.size() || list[next].tells_all) return {};
    std::vector<ListedLine> again;
    std::ranges::copy_if(list, std::back_inserter(again), &ListedLine::tells_all);
    if (list[next].has_rule) return again;
    std::size_t head = next;
    while (head > 0 && !list[head].has_rule) --head;
    for (auto i = head; i < next && !list[i].has_box; ++i)
        if (!list[i].tells_mates) again.push_back(list[i]);
    if (!list[next].needs_mates) return again;
    auto end = next;
    while (end > head && !list[end - 1].tells_mates) --end;
    auto from = end;
    while (from > head && list[from - 1].tells_mates) --from;
    for (auto i = from; i < end; ++i) again.push_back(list[i]);
    return again;
}

double height_of(const std::vector<ListedLine>& lines) {
    double height = 0.0;
    for (const auto& line : lines) height += line.height;
    return height;
}

void draw_listed_line(engine::Page& page,
                      engine::PageBox place,
                      const Resolved& resolved,
                      const ListedLine& line) {
    const double base = place.top + line.height - 1.7;
    if (line.has_rule) {
        const double y = place.top + 1.2;
        page.draw_line({place.left, y}, {place.left + place.width, y},
                       {.width = engine::thin_width});
    }
    if (line.has_box) page.draw_rectangle({place.left, base - 3.6, 3.6, 3.6});
    for (const auto& text : line.texts)
        page.draw_text({place.left + text.left, base}, text.words, text.lettering);
    if (!line.hole) return;
    const auto& hole = resolved.holes[*line.hole];
    draw_hole_sign(page, {.at = {place.left + place.width - 3.0, base - 1.8},
                          .radius = 1.0,
                          .sign = sign_of(resolved, hole),
                          .is_matched = hole.operation == HoleOperation::match_drill});
}

}  // namespace model
