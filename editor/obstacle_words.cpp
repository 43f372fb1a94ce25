#include "editor/obstacle_words.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "model/resolve/named_values.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <variant>

namespace editor {
namespace {

using model::Formula;
using model::Nm;

class Sizes {
public:
    explicit Sizes(const Derived& derived)
        : values_{*derived.project, derived.resolved}, shown_{derived.project->shown} {}

    std::string operator()(const model::BoxObstacle& box) const {
        const auto size = size_of(box.least, box.most);
        if (!size) return {};
        return text((*size)[0]) + " x " + text((*size)[1]) + " x " + text((*size)[2]);
    }

    std::string operator()(const model::WheelWell& well) const {
        const auto size = size_of(well.least, well.most);
        if (!size) return {};
        const auto out = well.inner_side == model::Axis::y ? 1U : 0U;
        return text((*size)[1 - out]) + " long, " + text((*size)[2]) + " high, reaches " +
               text((*size)[out]);
    }

    std::string operator()(const model::WallProfile& wall) const {
        return profile_words(wall, "stands in up to ",
                             [](const auto& offset) { return offset.inset; });
    }

    std::string operator()(const model::CeilingProfile& ceiling) const {
        return profile_words(ceiling, "comes down up to ",
                             [](const auto& offset) { return offset.drop; });
    }

    std::string operator()(const model::CylinderObstacle& cylinder) const {
        const auto radius = values_.length(cylinder.radius);
        const auto length = values_.length(cylinder.length);
        if (!radius || !length) return {};
        return text(2 * *radius) + " across, " + text(*length) + " long";
    }

    std::string operator()(const model::DoorSwing& door) const {
        const auto width = values_.length(door.width);
        const auto closed = values_.angle(door.closed);
        const auto open = values_.angle(door.open);
        if (!width || !closed || !open) return {};
        const engine::Quantity turn{.kind = engine::QuantityKind::angle,
                                    .value = std::max(*open, *closed) - std::min(*open, *closed)};
        return text(*width) + " wide, turns " + quantity_text(turn, shown_);
    }

    std::string operator()(const model::ScannedObstacle& scan) const {
        return std::filesystem::path(scan.file).filename().string();
    }

private:
    std::string text(Nm length) const {
        const engine::Quantity value{.kind = engine::QuantityKind::length,
                                     .length = engine::Length::from_nm(length)};
        return quantity_text(value, shown_);
    }

    std::optional<model::Point> size_of(const model::Place& least, const model::Place& most) const {
        const auto lo = values_.point(least);
        const auto hi = values_.point(most);
        if (!lo || !hi) return std::nullopt;
        return model::Point{(*hi)[0] - (*lo)[0], (*hi)[1] - (*lo)[1], (*hi)[2] - (*lo)[2]};
    }

    template <class Profile, class In>
    std::string profile_words(const Profile& profile, const char* words, In in) const {
        const auto from = values_.length(profile.from);
        const auto to = values_.length(profile.to);
        if (!from || !to) return {};
        Nm most = 0;
        auto look_at = [&](const auto& offsets) {
            return std::ranges::all_of(offsets, [&](const auto& offset) {
                const auto value = values_.length(in(offset));
                if (value) most = std::max(most, *value);
                return value.has_value();
            });
        };
        bool is_known = look_at(profile.offsets);
        for (const auto& station : profile.stations)
            is_known = is_known && look_at(station.offsets);
        if (!is_known) return {};
        return text(std::max(*from, *to) - std::min(*from, *to)) + " along, " + words + text(most);
    }

    model::NamedValues values_;
    engine::TapeStyle shown_;
};

// ---- new ones -----------------------------------------------------------------------------------

// The same obstacle in inches or in millimetres, each a round number.
struct Begin {
    bool is_metric = false;

    Formula length(const char* inches, const char* millimetres) const {
        return std::string(is_metric ? millimetres : inches) + (is_metric ? " mm" : " in");
    }
};

model::ObstacleShape new_wall(const Begin& begin) {
    return model::WallProfile{.at = "0",
                              .inside = model::Sense::plus,
                              .from = "0",
                              .to = begin.length("96", "2400"),
                              .offsets = {{"0", "0"},
                                          {begin.length("36", "900"), "0"},
                                          {begin.length("60", "1500"), begin.length("3", "75")}},
                              .stations = {}};
}

model::ObstacleShape new_ceiling(const Begin& begin) {
    return model::CeilingProfile{
        .at = begin.length("72", "1800"),
        .from = "0",
        .to = begin.length("96", "2400"),
        .offsets = {{"0", begin.length("4", "100")},
                    {begin.length("12", "300"), "0"},
                    {begin.length("56", "1400"), "0"},
                    {begin.length("68", "1700"), begin.length("4", "100")}},
        .stations = {}};
}

model::ObstacleShape new_shape(const Begin& begin, ObstacleKind kind) {
    switch (kind) {
        case ObstacleKind::box:
            return model::BoxObstacle{
                {"0", "0", "0"},
                {begin.length("12", "300"), begin.length("24", "600"), begin.length("8", "200")}};
        case ObstacleKind::wheel_well:
            return model::WheelWell{.least = {"0", begin.length("24", "600"), "0"},
                                    .most = {begin.length("8", "200"), begin.length("56", "1400"),
                                             begin.length("10", "250")},
                                    .top_radius = begin.length("1", "25")};
        case ObstacleKind::wall:
            return new_wall(begin);
        case ObstacleKind::ceiling:
            return new_ceiling(begin);
        case ObstacleKind::pipe_or_tank:
            return model::CylinderObstacle{.foot = {"0", "0", "0"},
                                           .along = model::Axis::z,
                                           .radius = begin.length("6", "150"),
                                           .length = begin.length("24", "600")};
        case ObstacleKind::door_swing:
            return model::DoorSwing{.hinge = {"0", "0", "0"},
                                    .width = begin.length("30", "750"),
                                    .height = begin.length("60", "1500")};
        case ObstacleKind::kept_clear:
            return model::BoxObstacle{{begin.length("24", "600"), "0", "0"},
                                      {begin.length("44", "1100"), begin.length("96", "2400"),
                                       begin.length("72", "1800")}};
        case ObstacleKind::scan:
            break;
    }
    return model::ScannedObstacle{};
}

}  // namespace

ObstacleKind kind_of(const model::Obstacle& obstacle) {
    struct Kind {
        ObstacleKind operator()(const model::BoxObstacle&) const { return ObstacleKind::box; }
        ObstacleKind operator()(const model::WheelWell&) const { return ObstacleKind::wheel_well; }
        ObstacleKind operator()(const model::WallProfile&) const { return ObstacleKind::wall; }
        ObstacleKind operator()(const model::CeilingProfile&) const {
            return ObstacleKind::ceiling;
        }
        ObstacleKind operator()(const model::CylinderObstacle&) const {
            return ObstacleKind::pipe_or_tank;
        }
        ObstacleKind operator()(const model::DoorSwing&) const { return ObstacleKind::door_swing; }
        ObstacleKind operator()(const model::ScannedObstacle&) const { return ObstacleKind::scan; }
    };
    const auto kind = std::visit(Kind{}, obstacle.shape);
    return kind == ObstacleKind::box && obstacle.stays_clear ? ObstacleKind::kept_clear : kind;
}

const char* word_of(ObstacleKind kind) {
    const auto at = std::ranges::find(obstacle_kinds, kind, &ObstacleKindRow::kind);
    return at == obstacle_kinds.end() ? "" : at->word;
}

std::string size_words(const model::Obstacle& obstacle, const Derived& derived) {
    auto words = std::visit(Sizes{derived}, obstacle.shape);
    return words.empty() ? "size not known" : words;
}

model::Obstacle new_obstacle(const Derived& derived, ObstacleKind kind) {
    const Begin begin{is_metric(derived.project->shown)};
    const char* name = kind == ObstacleKind::pipe_or_tank ? "tank" : word_of(kind);
    return {.name = free_obstacle_name(*derived.project,
                                       kind == ObstacleKind::kept_clear ? "walkway" : name),
            .shape = new_shape(begin, kind),
            .stays_clear = kind == ObstacleKind::kept_clear || kind == ObstacleKind::door_swing};
}

std::string free_obstacle_name(const model::Project& project, const std::string& wanted) {
    std::string name = wanted;
    for (int n = 2; by_name(project.room, name) != nullptr; ++n) {
        name = wanted + " " + std::to_string(n);
    }
    return name;
}

}  // namespace editor
