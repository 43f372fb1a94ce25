#include "model/schedule/stops.h"

#include "engine/files/csv.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/end_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <tuple>

namespace model {
namespace {

bool is_same_work(const StopRow& a, const StopRow& b) {
    return a.bar == b.bar && a.mark == b.mark && a.hand == b.hand && a.length == b.length &&
           a.section == b.section;
}

bool is_same_setting(const StopRow& a, const StopRow& b) {
    return a.section == b.section && a.length == b.length;
}

std::string mark_text(const Resolved& resolved, Index mark) {
    return mark == no_index ? std::string() : resolved.marks[mark].name;
}

}  // namespace

std::string ends_at_saw(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved,
                        Index piece) {
    const auto ends = told_end_words(project, catalogue, resolved, resolved.pieces[piece]);
    return ends[0] == ends[1] ? ends[0] : ends[0] + " | " + ends[1];
}

std::vector<StopRow> stop_rows(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const std::vector<BarRow>& bars) {
    std::vector<const BarRow*> order;
    for (const auto& row : bars) order.push_back(&row);
    std::ranges::stable_sort(order, {}, [&](const BarRow* row) {
        const auto& piece = resolved.pieces[row->piece];
        return std::tuple{row->stock, -row->length.nm(), row->mark, row->bar, piece.hand};
    });
    std::vector<StopRow> rows;
    for (const auto* bar : order) {
        auto ends = ends_at_saw(project, catalogue, resolved, bar->piece);
        const bool is_square = ends == "square";
        const auto hand = resolved.pieces[bar->piece].hand;
        StopRow row{.section = bar->section,
                    .length = bar->length,
                    .bar = bar->bar,
                    .pieces = 1,
                    .mark = bar->mark,
                    .hand = is_square ? Hand::none : hand,
                    .opposite = hand == Hand::opposite ? 1 : 0,
                    .ends = std::move(ends)};
        if (!rows.empty() && is_same_work(rows.back(), row)) {
            ++rows.back().pieces;
            rows.back().opposite += row.opposite;
            continue;
        }
        row.setting = rows.empty()                        ? 1
                      : is_same_setting(rows.back(), row) ? rows.back().setting
                                                          : rows.back().setting + 1;
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string stop_csv(const Project& project,
                     const Resolved& resolved,
                     const std::vector<StopRow>& rows) {
    engine::CsvText text{"setting", "section", "stop", "length_mm", "bar",
                         "pieces",  "mark",    "hand", "ends"};
    LengthTexts shown{project.shown};
    for (const auto& row : rows) {
        text.row({std::to_string(row.setting), row.section, shown(row.length),
                  decimal_mm(row.length), std::to_string(row.bar), std::to_string(row.pieces),
                  mark_text(resolved, row.mark), name_of(row.hand), row.ends});
    }
    return std::move(text).take();
}

std::string offcut_label(const Project& project, const BarRow& last) {
    return last.section + ", " + length_text(project, last.offcut) + ", of bar " +
           std::to_string(last.bar);
}

std::string nest_csv(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     const std::vector<BarRow>& bars) {
    engine::CsvText text{"bar",     "from",      "section", "bar_length",    "sequence",
                         "becomes", "mark",      "hand",    "start",         "end",
                         "length",  "length_mm", "ends",    "to_write_on_it"};
    LengthTexts shown{project.shown};
    using engine::Length;
    const auto least_offcut = Length::from_nm(resolved.shop.least_offcut);
    const auto line = [&](const BarRow& bar, int sequence, std::string_view becomes,
                          std::string_view mark, std::string_view hand, Length start, Length end,
                          const std::string& ends, const std::string& label) {
        text.row(
            {std::to_string(bar.bar), with_half(name_of(bar.from), bar.halved_from, project.shown),
             bar.section, shown(bar.bar_length), std::to_string(sequence), becomes, mark, hand,
             shown(start), shown(end), shown(end - start), decimal_mm(end - start), ends, label});
    };
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const auto& row = bars[i];
        const bool is_first = i == 0 || bars[i - 1].bar != row.bar;
        const bool is_last = i + 1 == bars.size() || bars[i + 1].bar != row.bar;
        if (is_first) {
            // Of a bar at the saw what was cut from it before lies there too.
            const bool is_new = row.from != BarFrom::saw;
            line(row, 0, is_new ? "end trim" : "cut before", {}, {}, {}, row.start, {}, {});
        }
        const auto& piece = resolved.pieces[row.piece];
        line(row, row.sequence, "piece", mark_text(resolved, row.mark), name_of(piece.hand),
             row.start, row.start + row.length,
             ends_at_saw(project, catalogue, resolved, row.piece), {});
        if (!is_last || row.offcut == Length{}) continue;
        const bool is_kept = row.offcut >= least_offcut;
        line(row, row.sequence + 1, is_kept ? "offcut" : "scrap", {}, {},
             row.bar_length - row.offcut, row.bar_length, {},
             is_kept ? offcut_label(project, row) : std::string());
    }
    return std::move(text).take();
}

}  // namespace model
