#include "model/book/drill_strips.h"

#include "engine/measure/tape.h"
#include "model/book/draw_strip.h"
#include "model/book/name_on_paper.h"
#include "model/book/stamp.h"
#include "model/book/strip_sheet.h"
#include "model/schedule/page_flow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

// Distances that a tape of the project has large marks for.
engine::Length laid_off_step(const Project& project) {
    const bool is_inch = measured_ruler(project).nm() % engine::Length::nm_per_inch == 0;
    return engine::Length::from_nm(is_inch ? engine::Length::nm_per_inch / 4
                                           : 5 * engine::Length::nm_per_mm);
}

double widest_piece(engine::Paper paper, const PrinterScale& printer) {
    return strip_field(engine::paper_size(paper)).size.width * printer.across;
}

// The next paper that is wide enough, of the family that is in use first.
std::string larger_paper_words(double width, const StripWish& wish) {
    using engine::Paper;
    const bool is_inch = wish.paper == Paper::letter || wish.paper == Paper::tabloid;
    const std::array<Paper, 2> papers =
        is_inch ? std::array{Paper::tabloid, Paper::a3} : std::array{Paper::a3, Paper::tabloid};
    for (const auto paper : papers) {
        if (width <= widest_piece(paper, wish.printer))
            return "print the strips on larger paper: " + std::string(engine::name_of(paper));
    }
    return "mark it from its drawing in the shop book, since no paper is wide enough";
}

class Strips {
public:
    Strips(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           const StripWish& wish)
        : project_{project},
          resolved_{resolved},
          wish_{wish},
          field_{strip_field(engine::paper_size(wish.paper))},
          facts_{mark_facts(project, catalogue, resolved)},
          tiles_(facts_.size()) {
        for (auto& facts : facts_) outside_.push_back(seen_from_outside(facts.flat));
    }

    DrillStrips strips() && {
        for (std::size_t i = 0; i < facts_.size(); ++i) add_mark(i);
        pack();
        DrillStrips made{.document = {.title = "Drill strips: " + name_on_paper(project_)},
                         .refused = std::move(refused_)};
        const auto stamp = sheet_count_ > 0 ? project_stamp(project_) : std::string();
        for (std::size_t i = 0; i < sheet_count_; ++i) {
            made.document.pages.push_back(strip_sheet(
                project_, wish_, {i + 1, sheet_count_, holds(i), refused_marks_, stamp}));
        }
        draw_papers(made.document);
        return made;
    }

private:
    void add_mark(std::size_t i) {
        if (facts_[i].cut.kind == PieceKind::panel) return;
        const double width = widest_drilled_wall(outside_[i]);
        if (width > widest_piece(wish_.paper, wish_.printer)) return refuse(i, width);
        double length = (field_.size.height - strip_head - strip_foot) * wish_.printer.down;
        auto drawings = drawings_of(i, length);
        // Papers with a tab are shorter.
        for (int tries = 0; tries < 4 && over_length(drawings) > 0.0; ++tries) {
            length -= over_length(drawings) * wish_.printer.down + 0.1;
            drawings = drawings_of(i, length);
        }
        if (over_length(drawings) > 0.0) return refuse_too_long(i);
        drawings_.insert(drawings_.end(), drawings.begin(), drawings.end());
    }

    // mm that the longest of these is longer than the field.
    double over_length(const std::vector<StripDrawing>& drawings) const {
        double over = 0.0;
        for (const auto& drawing : drawings)
            over = std::max(over, size_of(drawing).height - field_.size.height);
        return over > 1.0e-6 ? over : 0.0;
    }

    void refuse_too_long(std::size_t i) {
        const auto name = name_of_mark(resolved_, facts_[i]);
        refused_marks_.push_back(name);
        refused_.push_back(name + " has no strip: with its words it is longer than " +
                           std::string(engine::name_of(wish_.paper)) +
                           " has room for; print the strips on larger paper, or mark it from its "
                           "drawing in the shop book");
    }

    void refuse(std::size_t i, double width) {
        const auto name = name_of_mark(resolved_, facts_[i]);
        const auto shown = [&](double mm) {
            return length_on_paper(project_, engine::Length::from_nm(std::llround(mm * 1.0e6)));
        };
        refused_marks_.push_back(name);
        refused_.push_back(name + " has no strip: it is " + shown(width) + " wide, and " +
                           std::string(engine::name_of(wish_.paper)) + " has room for " +
                           shown(widest_piece(wish_.paper, wish_.printer)) + "; " +
                           larger_paper_words(width, wish_));
    }

    // Papers no longer than that, mm of the piece.
    std::vector<StripDrawing> drawings_of(std::size_t i, double length) {
        const TileRoom room{.width = field_.size.width * wish_.printer.across,
                            .length = length,
                            .step = laid_off_step(project_)};
        auto& tiles = tiles_[i];
        tiles = strip_tiles(outside_[i], i, room);
        std::vector<StripDrawing> drawings;
        for (std::size_t k = 0; k < tiles.size(); ++k) {
            const bool goes_on =
                k + 1 < tiles.size() && tiles[k + 1].first_wall == tiles[k].first_wall;
            StripDrawing drawing;
            drawing.part = {.project = &project_,
                            .resolved = &resolved_,
                            .facts = &facts_[i],
                            .outside = &outside_[i],
                            .tile = &tiles[k],
                            .next = goes_on ? &tiles[k + 1] : nullptr,
                            .printer = wish_.printer};
            drawing.labels = strip_labels(drawing.part);
            drawings.push_back(std::move(drawing));
        }
        return drawings;
    }

    void pack() {
        std::vector<PackedSize> sizes;
        std::vector<std::size_t> marks;
        for (const auto& drawing : drawings_) {
            sizes.push_back(size_of(drawing));
            marks.push_back(drawing.part.tile->mark);
        }
        places_ = packed_in_groups(sizes, marks, field_.size, strip_gap);
        for (const auto& place : places_) sheet_count_ = std::max(sheet_count_, place.sheet + 1);
    }

    // "A1 as drawn, parts 1 to 3 of 4; A2": in order of mark, as the papers are.
    std::string holds(std::size_t sheet) const {
        std::string words;
        for (std::size_t i = 0; i < drawings_.size(); ++i) {
            if (places_[i].sheet != sheet) continue;
            const auto& first = *drawings_[i].part.tile;
            std::size_t last = i;
            while (last + 1 < drawings_.size() && places_[last + 1].sheet == sheet &&
                   drawings_[last + 1].part.tile->mark == first.mark)
                ++last;
            words += (words.empty() ? "" : "; ") + strip_name(drawings_[i].part);
            if (first.parts > 1) {
                words += last > i ? ", parts " + std::to_string(first.part) + " to " +
                                        std::to_string(drawings_[last].part.tile->part)
                                  : ", part " + std::to_string(first.part);
                words += " of " + std::to_string(first.parts);
            }
            i = last;
        }
        return words;
    }

    void draw_papers(engine::Document& document) const {
        for (std::size_t i = 0; i < drawings_.size(); ++i) {
            const auto& place = places_[i];
            draw_strip(document.pages[place.sheet],
                       {field_.left + place.left, field_.top + place.top}, drawings_[i]);
            if (drawings_[i].part.tile->part > 1) continue;
            document.bookmarks.push_back(
                {.title = strip_name(drawings_[i].part), .page = place.sheet});
        }
    }

    const Project& project_;
    const Resolved& resolved_;
    const StripWish& wish_;
    StripField field_;
    std::vector<MarkFacts> facts_;
    std::vector<UnrolledPiece> outside_;         // as facts_
    std::vector<std::vector<StripTile>> tiles_;  // as facts_
    std::vector<StripDrawing> drawings_;
    std::vector<PackedPlace> places_;  // as drawings_
    std::vector<std::string> refused_marks_;
    std::vector<std::string> refused_;
    std::size_t sheet_count_ = 0;
};

}  // namespace

DrillStrips drill_strips(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const StripWish& wish) {
    return Strips(project, catalogue, resolved, wish).strips();
}

}  // namespace model
