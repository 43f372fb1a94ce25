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

// What each bar becomes, from its datum end.
class NestText {
public:
    NestText(const Project& project, const Catalogue& catalogue, const Resolved& resolved)
        : project_{project}, catalogue_{catalogue}, resolved_{resolved}, shown_{project.shown} {}

    // `before`: the one in front of it on its bar; null where it is the first.
    void piece(const BarRow& row, const BarRow* before) {
        if (before == nullptr && row.start <= Length::from_nm(resolved_.shop.end_trim)) {
            line(row, 0, "end trim", {}, row.start);
        } else {
            cut_before(row, before == nullptr ? Length{} : behind(*before), row.start);
        }
        line(row, row.sequence, "piece", row.start, row.start + row.length,
             {.mark = mark_text(resolved_, row.mark),
              .hand = name_of(resolved_.pieces[row.piece].hand),
              .ends = ends_at_saw(project_, catalogue_, resolved_, row.piece)});
    }

    void rest(const BarRow& last) {
        const auto from = last.bar_length - last.offcut;
        cut_before(last, behind(last), from);
        if (last.offcut == Length{}) return;
        const bool is_kept = last.offcut >= Length::from_nm(resolved_.shop.least_offcut);
        line(last, last.sequence + 1, is_kept ? "offcut" : "scrap", from, last.bar_length,
             {.label = is_kept ? offcut_label(project_, last) : std::string()});
    }

    std::string take() && { return std::move(text_).take(); }

private:
    using Length = engine::Length;

    struct OfPiece {
        std::string mark;
        std::string_view hand;
        std::string ends;
        std::string label;
    };

    // Where the next piece begins.
    Length behind(const BarRow& row) const {
        return row.start + row.length + Length::from_nm(resolved_.shop.kerf);
    }

    // Of a bar at the saw what was cut from it before lies there too, also between pieces.
    void cut_before(const BarRow& row, Length from, Length to) {
        if (row.from == BarFrom::saw && to > from) line(row, 0, "cut before", from, to);
    }

    void line(const BarRow& bar,
              int sequence,
              std::string_view becomes,
              Length start,
              Length end,
              const OfPiece& of = {}) {
        text_.row({std::to_string(bar.bar),
                   with_half(name_of(bar.from), bar.halved_from, project_.shown), bar.section,
                   shown_(bar.bar_length), std::to_string(sequence), becomes, of.mark, of.hand,
                   shown_(start), shown_(end), shown_(end - start), decimal_mm(end - start),
                   of.ends, of.label});
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    LengthTexts shown_;
    engine::CsvText text_{"bar",     "from",      "section", "bar_length",    "sequence",
                          "becomes", "mark",      "hand",    "start",         "end",
                          "length",  "length_mm", "ends",    "to_write_on_it"};
};

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
    NestText text(project, catalogue, resolved);
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const bool is_first = i == 0 || bars[i - 1].bar != bars[i].bar;
        const bool is_last = i + 1 == bars.size() || bars[i + 1].bar != bars[i].bar;
        text.piece(bars[i], is_first ? nullptr : &bars[i - 1]);
        if (is_last) text.rest(bars[i]);
    }
    return std::move(text).take();
}

}  // namespace model
