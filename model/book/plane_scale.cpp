#include "model/book/plane_scale.h"

#include "engine/drawing/lettering.h"
#include "engine/drawing/push_apart.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <map>

namespace model {
namespace {

using engine::LetterWeight;
using engine::PagePoint;
using engine::TextAnchor;

constexpr double size = 3.6;   // mm, of the words
constexpr double pitch = 4.7;  // between them
constexpr double longest = 48.0;
constexpr double gap = 1.5;  // between what is measured and the line
constexpr double straight = 3.0;
constexpr double bent = 7.0;  // from the picture to where words begin

constexpr engine::Pen thin{.width = engine::thin_width};

std::vector<double> places_of(std::vector<PlaneOnPage>& planes, double least, double most) {
    std::ranges::sort(planes, {}, &PlaneOnPage::at);
    std::vector<double> places;
    for (const auto& plane : planes) places.push_back(plane.at);
    // Where there is no room for all they go on beyond the end rather than over each other.
    const double length = pitch * static_cast<double>(places.size());
    engine::push_apart(places, pitch, least, std::max(most, least + length));
    return places;
}

LetterWeight weight_of(const PlanePlace& place, const std::vector<PlaneOnPage>& all) {
    const bool is_last =
        std::ranges::none_of(all, [&](const PlaneOnPage& it) { return it.place->at > place.at; });
    return is_last ? LetterWeight::bold : LetterWeight::regular;
}

}  // namespace

std::vector<PlanePlace> plane_places(const Project& project,
                                     const Resolved& resolved,
                                     Index frame,
                                     Axis axis) {
    std::map<Nm, std::string> names;
    const auto& stated = project.frames[frame].planes;
    const auto& found = resolved.frames[frame].planes;
    for (std::size_t i = 0; i < stated.size() && i < found.size(); ++i) {
        if (found[i].axis != axis || !found[i].position) continue;
        auto& words = names[*found[i].position];
        words += (words.empty() ? "" : ", ") + stated[i].name;
    }
    std::vector<PlanePlace> places;
    for (const auto& [at, words] : names) {
        const auto from_first = Length::from_nm(at - names.begin()->first);
        places.push_back({at, from_first,
                          shortened(length_on_paper(project, from_first) + "  " + words, size,
                                    longest, LetterWeight::bold)});
    }
    return places;
}

double plane_scale_room(const std::vector<PlanePlace>& places) {
    double width = 0.0;
    for (const auto& place : places)
        width = std::max(width, engine::text_width(place.words, size, LetterWeight::bold));
    return bent + 1.0 + width;
}

void draw_plane_scale_below(engine::Page& page,
                            std::vector<PlaneOnPage> planes,
                            const engine::PageBox& picture) {
    const double top = picture.top + picture.height;
    const auto places = places_of(planes, picture.left - 6.0, picture.left + picture.width + 6.0);
    for (std::size_t i = 0; i < planes.size(); ++i) {
        const double x = planes[i].at;
        page.draw_polyline({{x, top + gap},
                            {x, top + straight},
                            {places[i], top + bent - 1.0},
                            {places[i], top + bent}},
                           thin);
        page.draw_text({places[i] + 0.36 * size, top + bent + 0.8}, planes[i].place->words,
                       {.size = size,
                        .weight = weight_of(*planes[i].place, planes),
                        .anchor = TextAnchor::end,
                        .turned_deg = 90});
    }
}

void draw_plane_scale_beside(engine::Page& page,
                             std::vector<PlaneOnPage> planes,
                             const engine::PageBox& picture) {
    const auto places = places_of(planes, picture.top - 4.0, picture.top + picture.height + 4.0);
    for (std::size_t i = 0; i < planes.size(); ++i) {
        const double y = planes[i].at;
        page.draw_polyline({{picture.left - gap, y},
                            {picture.left - straight, y},
                            {picture.left - bent + 1.0, places[i]},
                            {picture.left - bent, places[i]}},
                           thin);
        page.draw_text({picture.left - bent - 0.8, places[i] + 0.36 * size}, planes[i].place->words,
                       {.size = size,
                        .weight = weight_of(*planes[i].place, planes),
                        .anchor = TextAnchor::end});
    }
}

}  // namespace model
