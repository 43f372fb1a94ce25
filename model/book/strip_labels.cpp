#include "model/book/strip_labels.h"

#include "model/book/label_shape.h"
#include "model/book/strip_ground.h"
#include "model/book/strip_numbers.h"
#include "model/book/strip_paper.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

using engine::LetterWeight;
using engine::PageBox;

constexpr double label_inset = 1.0;   // from edges and folds
constexpr double around_label = 1.3;  // to the next one
constexpr double tab_size = 2.4;
constexpr double tab_gap = 1.0;
constexpr double tab_foot = 0.8;                           // for what hangs below its last line
const std::vector<double> name_sizes{3.2, 2.8, 2.4, 2.0};  // capitals of 1.4 mm at least
const std::vector<double> word_sizes{2.6, 2.3, 2.0};

PageBox shrunk(const PageBox& box) {
    return {box.left + label_inset, box.top + label_inset, box.width - 2 * label_inset,
            box.height - 2 * label_inset};
}

class LabelLaying {
public:
    // What a paper with a tab says of its edges differs from what one without says.
    LabelLaying(const StripPart& part, const StripTools& tools, bool has_tab)
        : part_{part},
          tools_{tools},
          has_tab_{has_tab},
          paper_{*part.outside, *part.tile, part.printer},
          ground_{part, paper_} {
        if (has_tab_) for_tab_.push_back({.paragraphs = {strip_tab_words(part_)}});
        for (std::size_t i = 0; i < paper_.leg_count(); ++i) legs_.push_back(shrunk(paper_.leg(i)));
    }

    StripLabels labels() && {
        auto [numbers, notes] = strip_numbers(part_, tools_, paper_, ground_);
        made_.numbers = std::move(numbers);
        const LabelWords name{.paragraphs = name_words(), .weight = LetterWeight::bold};
        if (!lay(name, name_sizes, legs_)) for_tab_.push_back(name);
        lay_legs();
        LabelWords arrow{.paragraphs = strip_arrow_words(part_, has_tab_),
                         .between = " ",
                         .arrow = LabelArrow::up};
        if (has_tab_ || !lay(arrow, word_sizes, legs_)) {
            // Beyond the end of the piece a tab lies on the other side of it.
            if (part_.tile->start.kind == TileEnd::piece) arrow.arrow = LabelArrow::down;
            for_tab_.push_back(arrow);
        }
        for (const auto& note : notes) {
            const LabelWords words{.paragraphs = {note}};
            if (!lay_on_leg(words, word_sizes, legs_)) for_tab_.push_back(words);
        }
        if (const auto drill = tools_.drill_words(); !drill.empty())
            lay_on_leg({.paragraphs = {drill}}, word_sizes, legs_);
        lay_tab();
        return std::move(made_);
    }

private:
    std::vector<std::string> name_words() const {
        std::vector<std::string> words{strip_name(part_)};
        if (auto which = strip_part_words(part_); !which.empty()) words.push_back(std::move(which));
        return words;
    }

    // Each on its own leg; one that is all cut away here, or has nothing to drill, can do without.
    // Where one is lacking the tab names all, so that "from left" is true of each.
    void lay_legs() {
        std::string all;
        bool is_one_lacking = false;
        for (std::size_t i = 0; i < legs_.size(); ++i) {
            const auto words = strip_leg_words(paper_.wall(i));
            all += (all.empty() ? "" : "; ") + words;
            const bool is_named = lay_on_leg({.paragraphs = {words}}, word_sizes, {legs_[i]});
            if (!is_named && has_holes(i)) is_one_lacking = true;
        }
        if (!is_one_lacking) return;
        for_tab_.push_back({.paragraphs = {(legs_.size() > 1 ? "from left: " : "") + all}});
    }

    bool has_holes(std::size_t leg) const {
        return std::ranges::count(paper_.holes(), leg, &StripHole::leg) > 0;
    }

    bool lay(const LabelWords& words,
             const std::vector<double>& sizes,
             const std::vector<PageBox>& legs) {
        if (lay_on_leg(words, sizes, legs)) return true;
        if (legs.size() < 2) return false;
        // Level there: the fold's line is broken at each of its lines.
        const PageBox whole = shrunk({0.0, 0.0, paper_.width(), paper_.height()});
        return lay_in(words, sizes, {whole}, false);
    }

    bool lay_on_leg(const LabelWords& words,
                    const std::vector<double>& sizes,
                    const std::vector<PageBox>& legs) {
        return lay_in(words, sizes, legs, true);
    }

    bool lay_in(const LabelWords& words,
                const std::vector<double>& sizes,
                const std::vector<PageBox>& areas,
                bool may_turn) {
        return offer_shapes(words, sizes, [&](const LabelShape& shape) {
            if (shape.is_turned && !may_turn) return false;
            for (const auto& area : areas) {
                const auto place = ground_.free_place_in(area, shape.box);
                if (!place) continue;
                ground_.block(*place, around_label);
                put(words, shape, *place);
                return true;
            }
            return false;
        });
    }

    void put(const LabelWords& words, const LabelShape& shape, const PageBox& place) {
        made_.labels.push_back(
            {shape.lines, place, shape.size, words.weight, shape.is_turned, words.arrow});
    }

    void lay_tab() {
        if (for_tab_.empty()) return;
        std::vector<LabelShape> shapes;
        made_.tab = tab_gap + tab_foot;
        for (const auto& words : for_tab_) {
            shapes.push_back(label_in_width(words, tab_size, paper_.width() - 2 * label_inset));
            made_.tab += shapes.back().box.height + tab_gap;
        }
        double top = tab_gap - made_.tab;
        for (std::size_t i = 0; i < shapes.size(); ++i) {
            const auto& box = shapes[i].box;
            put(for_tab_[i], shapes[i], {label_inset, top, box.width, box.height});
            top += box.height + tab_gap;
        }
    }

    const StripPart& part_;
    const StripTools& tools_;
    bool has_tab_;
    StripPaper paper_;
    StripGround ground_;
    std::vector<PageBox> legs_;
    std::vector<LabelWords> for_tab_;
    StripLabels made_;
};

}  // namespace

StripLabels strip_labels(const StripPart& part) {
    const StripTools tools(*part.facts);
    auto labels = LabelLaying(part, tools, false).labels();
    if (labels.tab == 0.0) return labels;
    return LabelLaying(part, tools, true).labels();
}

}  // namespace model
