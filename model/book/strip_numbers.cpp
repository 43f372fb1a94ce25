#include "model/book/strip_numbers.h"

#include "model/book/label_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace model {
namespace {

using engine::PageBox;
using engine::PagePoint;

constexpr double least_number_size = 1.8;
constexpr double longest_lead = 9.0;

class NumberLaying {
public:
    NumberLaying(const StripPart& part,
                 const StripTools& tools,
                 const StripPaper& paper,
                 StripGround& ground)
        : outside_{*part.outside}, tools_{tools}, paper_{paper}, ground_{ground} {}

    // What is done at a hole is told elsewhere on the paper where it has no room beside its cross.
    StripNumbers numbers() && {
        for (const auto& hole : paper_.holes()) {
            const auto words = tools_.hole_words(outside_.holes[hole.hole].hole);
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
            if (colon != std::string::npos) made_.notes.push_back(words);
            if (!is_numbered)
                made_.notes.push_back("hole " + number + " stands without its number");
        }
        return std::move(made_);
    }

private:
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
        for (double away = hole.radius + 2.0; away <= longest_lead; away += 0.5) {
            for (int eighth = 0; eighth < 8; ++eighth) {
                if (lay_at(hole, words, away, eighth * std::numbers::pi / 4)) return true;
            }
        }
        return false;
    }

    bool lay_at(const StripHole& hole, const std::string& words, double away, double turn) {
        const double width = engine::text_width(words, least_number_size);
        const double height = engine::capital_height(least_number_size);
        const PagePoint to{std::cos(turn), std::sin(turn)};
        const PageBox box{hole.at.x + to.x * (away + width / 2) - width / 2,
                          hole.at.y + to.y * (away + height / 2) - height / 2, width, height};
        const PagePoint from{hole.at.x + to.x * (away - 0.5), hole.at.y + to.y * (away - 0.5)};
        const PagePoint edge{hole.at.x + to.x * hole.radius, hole.at.y + to.y * hole.radius};
        if (!is_sound_number(hole, box) || !is_clear_lead(hole, from, edge)) return false;
        put_number(box, words, least_number_size);
        made_.numbers.back().lead = {from, edge};
        ground_.block(around(from, edge), 0.3);
        leads_.push_back(around(from, edge));
        return true;
    }

    static PageBox around(const PagePoint& a, const PagePoint& b) {
        return {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
    }

    bool is_clear_lead(const StripHole& hole, const PagePoint& from, const PagePoint& edge) const {
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

    const UnrolledPiece& outside_;
    const StripTools& tools_;
    const StripPaper& paper_;
    StripGround& ground_;
    std::vector<PageBox> numbers_;
    std::vector<PageBox> leads_;
    StripNumbers made_;
};

}  // namespace

StripNumbers strip_numbers(const StripPart& part,
                           const StripTools& tools,
                           const StripPaper& paper,
                           StripGround& ground) {
    return NumberLaying(part, tools, paper, ground).numbers();
}

}  // namespace model
