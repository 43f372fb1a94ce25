#include "model/book/strip_labels.h"

#include "model/book/label_shape.h"
#include "model/book/strip_ground.h"
#include "model/book/strip_paper.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace model {
namespace {

using engine::LetterWeight;
using engine::PageBox;

constexpr double label_inset = 1.0;   // from edges and folds
constexpr double around_label = 1.3;  // to the next one
constexpr double least_number_size = 1.8;
constexpr double longest_lead = 9.0;
constexpr double tab_size = 2.4;
constexpr double tab_gap = 1.0;
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
        lay_numbers();
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
        for (const auto& note : notes_) lay_on_leg({.paragraphs = {note}}, word_sizes, legs_);
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

    // What is done at a hole is told elsewhere on the paper where it has no room beside its cross.
    void lay_numbers() {
        for (const auto& hole : paper_.holes()) {
            const auto words = tools_.hole_words(part_.outside->holes[hole.hole].hole);
            if (words.empty()) continue;
            double letters = hole_number_size;
            bool has_room = false;
            for (; !has_room && letters >= least_number_size; letters -= 0.2)
                has_room = lay_number(hole, words, letters);
            if (has_room) continue;
            const auto colon = words.find(':');
            const auto number = words.substr(0, colon);
            const bool is_numbered = lay_number(hole, number, hole_number_size) ||
                                     lay_number(hole, number, least_number_size) ||
                                     lay_aside(hole, number);
            if (colon != std::string::npos) notes_.push_back(words);
            if (!is_numbered) notes_.push_back("hole " + number + " stands without its number");
        }
    }

    // In one of the four corners of its cross, on its leg and clear of other numbers.
    bool lay_number(const StripHole& hole, const std::string& words, double size) {
        const double off = std::max(1.2, 0.72 * hole.radius);
        const double width = engine::text_width(words, size);
        const double height = engine::capital_height(size);
        std::vector<PageBox> corners;
        for (const double top : {hole.at.y - off - height, hole.at.y + off})
            for (const double left : {hole.at.x + off, hole.at.x - off - width})
                corners.push_back({left, top, width, height});
        const auto sound = std::ranges::find_if(
            corners, [&](const PageBox& box) { return is_sound_number(hole, box); });
        if (sound == corners.end()) return false;
        put_number(*sound, words, size);
        return true;
    }

    void put_number(const PageBox& box, const std::string& words, double size) {
        numbers_.push_back(box);
        ground_.block(box, 0.5);
        made_.numbers.push_back({{box.left, box.top + box.height}, words, size});
    }

    // Near the hole, level with it or above or below, with a short lead to its edge.
    bool lay_aside(const StripHole& hole, const std::string& words) {
        const double width = engine::text_width(words, least_number_size);
        const double height = engine::capital_height(least_number_size);
        for (double away = hole.radius + 2.0; away <= longest_lead; away += 0.5) {
            for (int eighth = 0; eighth < 8; ++eighth) {
                const double turn = eighth * std::numbers::pi / 4;
                const engine::PagePoint to{std::cos(turn), std::sin(turn)};
                const PageBox box{hole.at.x + to.x * (away + width / 2) - width / 2,
                                  hole.at.y + to.y * (away + height / 2) - height / 2, width,
                                  height};
                const engine::PagePoint from{hole.at.x + to.x * (away - 0.5),
                                             hole.at.y + to.y * (away - 0.5)};
                const engine::PagePoint edge{hole.at.x + to.x * hole.radius,
                                             hole.at.y + to.y * hole.radius};
                if (!is_sound_number(hole, box) || !is_clear_lead(hole, from, edge)) continue;
                put_number(box, words, least_number_size);
                made_.numbers.back().lead = {from, edge};
                ground_.block(around(from, edge), 0.3);
                leads_.push_back(around(from, edge));
                return true;
            }
        }
        return false;
    }

    static PageBox around(const engine::PagePoint& a, const engine::PagePoint& b) {
        return {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
    }

    bool is_clear_lead(const StripHole& hole,
                       const engine::PagePoint& from,
                       const engine::PagePoint& edge) const {
        const auto box = around(from, edge);
        const auto is_clear = [&](const PageBox& other) { return are_apart(box, other); };
        return std::ranges::all_of(numbers_, is_clear) &&
               std::ranges::all_of(paper_.holes(), [&](const StripHole& other) {
                   const double reach = other.radius + 0.3;
                   return other.hole == hole.hole ||
                          is_clear({other.at.x - reach, other.at.y - reach, 2 * reach, 2 * reach});
               });
    }

    bool is_sound_number(const StripHole& hole, const PageBox& box) const {
        const auto leg = paper_.leg(hole.leg);
        const auto is_clear = [&](const PageBox& other) { return are_apart(box, other); };
        return box.left > leg.left + 0.3 && box.left + box.width < leg.left + leg.width - 0.3 &&
               box.top > 0.3 && box.top + box.height < leg.height - 0.3 &&
               std::ranges::all_of(numbers_, is_clear) && std::ranges::all_of(leads_, is_clear) &&
               std::ranges::all_of(paper_.holes(), [&](const StripHole& other) {
                   const double reach = other.hole == hole.hole ? 0.0 : other.radius + 0.5;
                   return is_clear({other.at.x - reach, other.at.y - reach, 2 * reach, 2 * reach});
               });
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
        // Level there, so that the fold goes through one letter of each line alone.
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
        made_.tab = tab_gap;
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
    std::vector<PageBox> numbers_;
    std::vector<PageBox> leads_;
    std::vector<std::string> notes_;
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
