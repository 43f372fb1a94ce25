#include "model/book/drill_strips.h"

#include "engine/drawing/lettering.h"
#include "engine/measure/tape.h"
#include "model/book/draw_strip.h"
#include "model/book/strip_ruler.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

constexpr double head_room = 15.0;  // of a sheet, for what it is
constexpr double gap = 4.0;         // between papers, for the scissors

// What a sheet has for papers, mm of paper.
struct Field {
    double left = 0.0;
    double top = 0.0;
    PackedSize size;
};

Field field_of(engine::PaperSize paper) {
    const double left = strip_margin + ruler_room + gap;
    const double top = strip_margin + head_room;
    return {
        left,
        top,
        {paper.width - strip_margin - left, paper.height - strip_margin - ruler_room - gap - top}};
}

// Distances that a tape of the project has large marks for.
engine::Length laid_off_step(const Project& project) {
    const bool is_inch = measured_ruler(project).nm() % engine::Length::nm_per_inch == 0;
    return engine::Length::from_nm(is_inch ? engine::Length::nm_per_inch / 4
                                           : 5 * engine::Length::nm_per_mm);
}

std::string percent(double scale) {
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "%.2f", 100.0 / scale);
    return text.data();
}

class Strips {
public:
    Strips(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           engine::Paper paper,
           const PrinterScale& printer)
        : project_{project},
          resolved_{resolved},
          size_{engine::paper_size(paper)},
          field_{field_of(size_)},
          printer_{printer},
          facts_{mark_facts(project, catalogue, resolved)} {
        for (auto& facts : facts_) outside_.push_back(seen_from_outside(facts.flat));
    }

    engine::Document document() && {
        cut_tiles();
        for (std::size_t i = 0; i < tiles_.size(); ++i) drawings_.push_back(drawing_of(i));
        pack();
        engine::Document made{.title = "Drill strips: " + project_.name};
        for (std::size_t i = 0; i < sheet_count_; ++i) made.pages.push_back(sheet(i));
        for (std::size_t i = 0; i < drawings_.size(); ++i) {
            draw_strip(made.pages[places_[i].sheet],
                       {field_.left + places_[i].left, field_.top + places_[i].top}, drawings_[i]);
            if (tiles_[i].part > 1) continue;
            made.bookmarks.push_back(
                {.title = name_of_mark(resolved_, *drawings_[i].facts), .page = places_[i].sheet});
        }
        return made;
    }

private:
    void cut_tiles() {
        const TileRoom room{
            .width = field_.size.width * printer_.across,
            .length = (field_.size.height - strip_head - strip_foot) * printer_.down,
            .step = laid_off_step(project_)};
        for (std::size_t i = 0; i < facts_.size(); ++i) {
            if (facts_[i].cut.kind == PieceKind::panel) continue;
            const auto tiles = strip_tiles(outside_[i], i, room);
            tiles_.insert(tiles_.end(), tiles.begin(), tiles.end());
        }
    }

    StripDrawing drawing_of(std::size_t i) const {
        const auto& tile = tiles_[i];
        const bool goes_on = i + 1 < tiles_.size() && tiles_[i + 1].mark == tile.mark &&
                             tiles_[i + 1].first_wall == tile.first_wall;
        return {.project = &project_,
                .resolved = &resolved_,
                .facts = &facts_[tile.mark],
                .outside = &outside_[tile.mark],
                .tile = &tile,
                .next = goes_on ? &tiles_[i + 1] : nullptr,
                .printer = printer_};
    }

    void pack() {
        std::vector<PackedSize> sizes;
        for (const auto& drawing : drawings_) sizes.push_back(size_of(drawing));
        places_ = packed_in_rows(sizes, field_.size, gap);
        for (const auto& place : places_) sheet_count_ = std::max(sheet_count_, place.sheet + 1);
    }

    engine::Page sheet(std::size_t i) const {
        engine::Page page(size_);
        const double left = strip_margin;
        page.draw_text({left, strip_margin + 4.0}, "Print at 100 %",
                       {.size = 4.6, .weight = engine::LetterWeight::bold});
        const std::string title = "Drill strips: " + project_.name + ", sheet " +
                                  std::to_string(i + 1) + " of " + std::to_string(sheet_count_);
        const double room = size_.width - 2 * strip_margin - 36.0;
        const double wide = engine::text_width(title, 3.6);
        page.draw_text({left + 36.0, strip_margin + 4.0}, title,
                       {.size = wide > room ? 3.6 * room / wide : 3.6});
        page.draw_text({left, strip_margin + 8.2}, correction_words(), {.size = 2.8});
        page.draw_text({left, strip_margin + 12.2},
                       "Cut out, fold at the chain line over the heel, print outward; lay the "
                       "edge on the end, punch the crosses.",
                       {.size = 2.8});
        draw_rulers(page, printer_);
        return page;
    }

    std::string correction_words() const {
        if (printer_ == PrinterScale{}) {
            auto style = project_.shown;
            style.with_unit = true;
            return "Measure both rulers of " + engine::exact_text(measured_ruler(project_), style) +
                   " with what you cut by. Where they are off, write the strips anew with what "
                   "they measure.";
        }
        return "Corrected for a printer: across " + percent(printer_.across) + " %, down " +
               percent(printer_.down) + " %. The rulers now measure what they say.";
    }

    const Project& project_;
    const Resolved& resolved_;
    engine::PaperSize size_;
    Field field_;
    PrinterScale printer_;
    std::vector<MarkFacts> facts_;
    std::vector<UnrolledPiece> outside_;  // as facts_
    std::vector<StripTile> tiles_;
    std::vector<StripDrawing> drawings_;
    std::vector<PackedPlace> places_;
    std::size_t sheet_count_ = 0;
};

}  // namespace

engine::Document drill_strips(const Project& project,
                              const Catalogue& catalogue,
                              const Resolved& resolved,
                              engine::Paper paper,
                              const PrinterScale& printer) {
    return Strips(project, catalogue, resolved, paper, printer).document();
}

}  // namespace model
