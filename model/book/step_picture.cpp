#include "model/book/step_picture.h"

#include "model/book/leader_labels.h"
#include "model/book/line_drawing.h"
#include "model/resolve/piece_place.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

namespace model {
namespace {

using engine::PageBox;
using engine::PagePoint;

constexpr double number_size = 2.9;  // mm
constexpr engine::LetterWeight number_weight = engine::LetterWeight::bold;

engine::Vector middle_of(const Resolved& resolved, const Joint& joint) {
    engine::Vector sum{};
    const auto fasteners = resolved.fasteners_of(joint);
    for (const auto& fastener : fasteners) {
        for (std::size_t k = 0; k < 3; ++k) sum[k] += in_mm(fastener.at[k]);
    }
    for (auto& part : sum) part /= static_cast<double>(std::max<std::size_t>(1, fasteners.size()));
    return sum;
}

// How far two pieces are apart, roughly.
double gap_between(const Piece& one, const Piece& other) {
    double squared = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm gap = std::max({one.extents.lo[k] - other.extents.hi[k],
                                 other.extents.lo[k] - one.extents.hi[k], Nm{0}});
        squared += in_mm(gap) * in_mm(gap);
    }
    return squared;
}

// Of many pieces those that are new and the nearest of the others: more could not be told apart.
std::vector<Index> shown_of(const Resolved& resolved,
                            const std::vector<Index>& stands,
                            const std::vector<bool>& is_new) {
    constexpr std::size_t most = 80;
    std::vector<Index> shown;
    std::vector<std::pair<double, Index>> others;
    for (const Index piece : stands)
        if (is_new[piece]) shown.push_back(piece);
    for (const Index piece : stands) {
        if (is_new[piece]) continue;
        double nearest = std::numeric_limits<double>::max();
        for (std::size_t k = 0; k < shown.size() && nearest > 0.0; ++k) {
            const auto gap = gap_between(resolved.pieces[piece], resolved.pieces[shown[k]]);
            nearest = std::min(nearest, gap);
        }
        others.push_back({nearest, piece});
    }
    std::ranges::stable_sort(others, {}, &std::pair<double, Index>::first);
    for (std::size_t k = 0; k < std::min(most, others.size()); ++k)
        shown.push_back(others[k].second);
    return shown;
}

double radius_of(const std::string& number) {
    return std::max(2.1, engine::text_width(number, number_size, number_weight) / 2 + 0.6);
}

double apart(const PagePoint& a, const PagePoint& b) { return std::hypot(a.x - b.x, a.y - b.y); }

bool is_in(const PageBox& box, const PagePoint& at, double radius) {
    return at.x - radius >= box.left && at.x + radius <= box.left + box.width &&
           at.y - radius >= box.top && at.y + radius <= box.top + box.height;
}

bool lies_on_one(const std::vector<PageBox>& boxes, const PagePoint& at, double radius) {
    return std::ranges::any_of(boxes, [&](const PageBox& box) {
        const double x = std::clamp(at.x, box.left, box.left + box.width);
        const double y = std::clamp(at.y, box.top, box.top + box.height);
        return apart(at, {x, y}) < radius + 0.3;
    });
}

// Of pieces that a few numbers would cover.
std::vector<PageBox> small_boxes(std::span<const SeenBody> seen,
                                 const OnPage& place,
                                 const std::vector<bool>& is_new) {
    constexpr double small = 20.0;  // mm, from trying
    std::map<Index, std::vector<SeenBody>> by_piece;
    for (const auto& body : seen)
        if (is_new[body.piece]) by_piece[body.piece].push_back(body);
    std::vector<PageBox> boxes;
    for (const auto& [piece, bodies] : by_piece) {
        const auto bounds = bounds_of(bodies);
        const auto corner = place({bounds.lo[0], bounds.hi[1]});
        const PageBox box{corner.x, corner.y, bounds.width() * place.scale,
                          bounds.height() * place.scale};
        if (std::max(box.width, box.height) < small) boxes.push_back(box);
    }
    return boxes;
}

// A line leads to the joint where its number had to stand beside it.
void draw_lead(engine::Page& page, const PagePoint& joint, const PagePoint& at, double radius) {
    if (apart(joint, at) <= radius) return;
    page.draw_line(at, joint, {.width = engine::thin_width});
    page.draw_circle(joint, 0.5, engine::filled(engine::Ink::black));
}

void draw_number(engine::Page& page, const PagePoint& at, const std::string& number) {
    page.draw_circle(
        at, radius_of(number),
        {.pen = engine::Pen{.width = engine::narrow_width}, .fill = engine::Ink::white});
    page.draw_text(
        {at.x, at.y + engine::capital_height(number_size, number_weight) / 2}, number,
        {.size = number_size, .weight = number_weight, .anchor = engine::TextAnchor::middle});
}

void draw_numbers(engine::Page& page,
                  const PageBox& box,
                  const OnPage& place,
                  const Resolved& resolved,
                  std::span<const StepJoint> joints,
                  const std::vector<PageBox>& kept_free) {
    std::vector<PagePoint> at;
    std::vector<double> radii;
    for (const auto& joint : joints) {
        const auto middle = middle_of(resolved, resolved.joints[joint.joint]);
        at.push_back(place(seen_point(middle, corner_sight())));
        radii.push_back(radius_of(std::to_string(joint.number)));
    }
    const auto places = places_of_numbers(at, radii, box, kept_free);
    // All leads first, so that none crosses a number.
    for (std::size_t i = 0; i < joints.size(); ++i) draw_lead(page, at[i], places[i], radii[i]);
    for (std::size_t i = 0; i < joints.size(); ++i)
        draw_number(page, places[i], std::to_string(joints[i].number));
}

// The label of a piece, which is drawn over the others where those hide it.
LeaderLabel marked(engine::Page& page,
                   std::span<const SeenBody> seen,
                   const OnPage& place,
                   const Resolved& resolved,
                   Index piece) {
    const bool hidden = is_hidden(seen, piece);
    if (hidden) draw_hidden(page, seen, place, piece);
    LeaderLabel label{.to = {}, .text = mark_on_drawing(resolved, resolved.pieces[piece])};
    for (const auto& at : hidden ? places_of_hidden(seen, piece) : places_to_point_at(seen, piece))
        label.to.push_back(place(at));
    return label;
}

}  // namespace

std::vector<PagePoint> places_of_numbers(const std::vector<PagePoint>& at,
                                         const std::vector<double>& radii,
                                         const PageBox& box,
                                         const std::vector<PageBox>& kept_free) {
    constexpr std::array<double, 8> reaches{0.0, 4.4, 6.4, 8.8, 11.5, 15.0, 19.0, 24.0};
    constexpr int ways = 16;
    std::vector<PagePoint> places;
    const auto is_free = [&](const PagePoint& there, double radius, bool keeps_off) {
        if (keeps_off && lies_on_one(kept_free, there, radius)) return false;
        for (std::size_t k = 0; k < places.size(); ++k) {
            if (apart(places[k], there) < radii[k] + radius + 0.3) return false;
        }
        return is_in(box, there, radius);
    };
    for (std::size_t i = 0; i < at.size(); ++i) {
        std::optional<PagePoint> found;
        for (const bool keeps_off : {true, false}) {
            for (const double reach : reaches) {
                for (int way = 0; way < ways && !found; ++way) {
                    const double angle = 2.0 * std::numbers::pi * way / ways;
                    const PagePoint there{at[i].x + reach * std::cos(angle),
                                          at[i].y + reach * std::sin(angle)};
                    if (is_free(there, radii[i], keeps_off)) found = there;
                }
            }
        }
        places.push_back(found.value_or(at[i]));
    }
    return places;
}

void draw_step_picture(engine::Page& page,
                       const PageBox& box,
                       const Resolved& resolved,
                       const std::vector<Index>& stands,
                       const std::vector<bool>& is_new,
                       std::span<const StepJoint> joints) {
    std::vector<BodyOfPiece> bodies;
    std::vector<LeaderLabel> labels;
    const auto shown = shown_of(resolved, stands, is_new);
    for (const Index piece : shown) {
        append_piece_bodies(bodies, resolved, piece);
        if (is_new[piece])
            labels.push_back({{}, mark_on_drawing(resolved, resolved.pieces[piece])});
    }
    if (bodies.empty()) return;
    const double beside = leader_room_beside(labels);
    labels.clear();
    const PageBox inner{box.left + beside, box.top + 3.0, box.width - 2 * beside, box.height - 6.0};
    const auto seen = seen_bodies(bodies, corner_sight());
    const auto place = fitted(bounds_of(seen), inner);
    draw_seen(page, seen, place, is_new);
    for (const Index piece : shown) {
        if (!is_new[piece]) continue;
        auto label = marked(page, seen, place, resolved, piece);
        if (!label.to.empty() && !label.text.empty()) labels.push_back(std::move(label));
    }
    draw_leader_labels(page, labels, inner, {.left = true, .right = true, .top = false});
    draw_numbers(page, inner, place, resolved, joints, small_boxes(seen, place, is_new));
    if (shown.size() == stands.size()) return;
    page.draw_text({box.left + box.width, box.top + box.height},
                   "what stands further off is left out",
                   {.size = 2.8, .anchor = engine::TextAnchor::end});
}

}  // namespace model
