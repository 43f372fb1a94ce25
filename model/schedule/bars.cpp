#include "engine/files/csv.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/tables.h"

namespace model {

std::vector<BarRow> bar_rows(const Project&,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BarPlan>& plans) {
    using engine::Length;
    std::vector<BarRow> rows;
    rows.reserve(resolved.pieces.size());
    int bar_number = 0;
    for (const auto& plan : plans) {
        for (const auto& bar : plan.bars) {
            ++bar_number;
            int sequence = 0;
            for (const auto& cut : bar.cuts) {
                const auto& piece = resolved.pieces[cut.piece];
                rows.push_back({.bar = bar_number,
                                .section = catalogue.sections[piece.section].id,
                                .bar_length = Length::from_nm(bar.length),
                                .sequence = ++sequence,
                                .mark = piece.mark,
                                .length = Length::from_nm(piece.length),
                                .start = Length::from_nm(cut.start),
                                .offcut = Length::from_nm(bar.offcut()),
                                .from = bar.from,
                                .price = bar.price,
                                .halved_from = Length::from_nm(bar.halved_from),
                                .at_saw = bar.at_saw,
                                .stock = plan.stock,
                                .piece = cut.piece});
            }
        }
    }
    return rows;
}

std::string bar_csv(const Project& project,
                    const Resolved& resolved,
                    const std::vector<BarRow>& rows) {
    engine::CsvText text{"bar",  "from", "section", "bar_length", "sequence",
                         "mark", "hand", "length",  "start",      "offcut"};
    LengthTexts shown{project.shown};
    for (const auto& row : rows) {
        text.row({std::to_string(row.bar),
                  with_half(name_of(row.from), row.halved_from, project.shown), row.section,
                  shown(row.bar_length), std::to_string(row.sequence),
                  row.mark == no_index ? std::string_view{} : resolved.marks[row.mark].name,
                  name_of(resolved.pieces[row.piece].hand), shown(row.length), shown(row.start),
                  shown(row.offcut)});
    }
    return std::move(text).take();
}

}  // namespace model
