#include "model/resolve/member_plates.h"

#include "model/resolve/name_index.h"
#include "model/resolve/run_on.h"

#include <array>
#include <functional>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>

namespace model {
namespace {

Finding left_out(std::string code, Subject subject, std::string what, std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::error,
            .concerns = {std::move(subject)},
            .what = std::move(what),
            .mend = std::move(mend)};
}

std::string nearest_words(const std::vector<std::string>& ids) {
    std::string text;
    for (const auto& id : ids) text += (text.empty() ? "; nearest: " : ", ") + id;
    return text;
}

// What a member needs to know of its frame while it is laid out.
struct Layout {
    const Frame& frame;
    const ResolvedFrame& placed;
    const std::unordered_map<std::string_view, Index>& planes;
    const std::unordered_map<std::string_view, Index>& stocks;
    std::span<const StockShape> shapes;
    Values& values;
    std::vector<Finding>& findings;
};

// The position of a plane that must look along `axis`.
std::optional<Nm> plane_position(const Layout& at,
                                 const std::string& name,
                                 Axis axis,
                                 const Subject& member) {
    const auto found = at.planes.find(name);
    if (found == at.planes.end()) {
        at.findings.push_back(left_out("unknown_plane", member,
                                       "it refers to a plane \"" + name + "\" that is not there",
                                       "add the plane, or choose another; the member is left out"));
        return std::nullopt;
    }
    const ResolvedPlane& plane = at.placed.planes[found->second];
    if (plane.axis != axis) {
        const char letters[] = {'x', 'y', 'z'};
        at.findings.push_back(left_out(
            "wrong_axis", member,
            "it needs a plane across " + std::string(1, letters[index_of(axis)]) + ", but \"" +
                name + "\" lies across " + std::string(1, letters[index_of(plane.axis)]),
            "choose a plane across the right axis; the member is left out"));
        return std::nullopt;
    }
    return plane.position;  // none: its formula has a finding of its own
}

const StockShape* shape_of(const Layout& at, const Member& member, const Subject& subject) {
    const auto found = at.stocks.find(member.stock);
    if (found == at.stocks.end()) {
        at.findings.push_back(
            left_out("unknown_stock", subject,
                     "it is made of a stock \"" + member.stock + "\" that is not there",
                     "add the stock, or choose another; the member is left out"));
        return nullptr;
    }
    const StockShape& shape = at.shapes[found->second];
    return shape.section == no_index ? nullptr : &shape;
}

int default_corner_order(Axis run) {
    if (run == Axis::z) return 10;
    return run == Axis::x ? 20 : 30;
}

void seat(Bar& bar, const Member& member) {
    for (std::size_t i = 0; i < 2; ++i) {
        bar.axis[i] = index_of(across(member.run)[i]);
        bar.leg[i] = sign_of(member.legs[i]);
        const bool root = member.seat == Seat::root;
        bar.inward[i] = root ? -bar.leg[i] : bar.leg[i];
        if (root) bar.seat_offset[i] = -bar.shape->wall_thickness[section_axis(bar, i)];
    }
}

std::optional<Bar> bar_of(const Layout& at, Index index) {
    const Member& member = at.frame.members[index];
    const Subject subject{SubjectKind::member, at.frame.name, member.name};
    const StockShape* shape = shape_of(at, member, subject);
    const auto runs_across = across(member.run);
    const auto first = plane_position(at, member.on[0], runs_across[0], subject);
    const auto second = plane_position(at, member.on[1], runs_across[1], subject);
    const auto from = plane_position(at, member.from, member.run, subject);
    const auto to = plane_position(at, member.to, member.run, subject);
    const auto held_from = at.values.length(member.allowance_from, subject, "allowance at from");
    const auto held_to = at.values.length(member.allowance_to, subject, "allowance at to");
    if (shape == nullptr || !first || !second || !from || !to || !held_from || !held_to) {
        return std::nullopt;
    }

    Bar bar{.member = index, .stock = shape->stock, .shape = shape, .run = member.run};
    bar.line = {*first, *second};
    bar.a_on = member.turned ? 0 : 1;
    bar.from = *from + *held_from;
    bar.to = *to - *held_to;
    bar.corner_order = member.rank.value_or(default_corner_order(member.run));
    seat(bar, member);
    if (bar.from < bar.to) return bar;
    at.findings.push_back(
        {.code = "no_length",
         .severity = Severity::error,
         .concerns = {subject},
         .numbers = {{"length", Length::from_nm(bar.to - bar.from)}},
         .what = "nothing is left of it between \"" + member.from + "\" and \"" + member.to + "\"",
         .mend = "move the planes apart, or swap from and to; the member is left "
                 "out"});
    return std::nullopt;
}

// Where a member lies across its run: two of one kind that overlap along it are in one place.
struct Lie {
    std::size_t run = 0;
    std::array<Nm, 2> line{};
    std::array<int, 2> leg{};

    bool operator==(const Lie&) const = default;
};

struct LieHash {
    std::size_t operator()(const Lie& lie) const {
        std::size_t h = lie.run;
        for (std::size_t i = 0; i < 2; ++i) {
            h = h * 1'000'003U + std::hash<Nm>{}(lie.line[i] * 4 + lie.leg[i]);
        }
        return h;
    }
};

// Leaves out what lies where an earlier member does; without it a heap of copies would be compared
// each with each.
class Places {
public:
    explicit Places(const Frame& frame) : frame_{frame} {}

    bool take(const Bar& bar, std::vector<Finding>& findings) {
        auto& here = taken_[Lie{index_of(bar.run), {heel(bar, 0), heel(bar, 1)}, bar.leg}];
        // What is kept does not overlap: only the last one that begins before this one's end can.
        const auto next = here.lower_bound(bar.to);
        if (next != here.begin() && std::prev(next)->second.to > bar.from) {
            const Taken& other = std::prev(next)->second;
            findings.push_back({.code = "same_place",
                                .severity = Severity::error,
                                .concerns = {member_subject(frame_, other.member),
                                             member_subject(frame_, bar.member)},
                                .what = "the second of these lies where the first one does",
                                .mend = "take one of them out, or let it run elsewhere; the second "
                                        "is left out"});
            return false;
        }
        here.emplace(bar.from, Taken{bar.to, bar.member});
        return true;
    }

private:
    struct Taken {
        Nm to = 0;
        Index member = 0;
    };

    const Frame& frame_;
    std::unordered_map<Lie, std::map<Nm, Taken>, LieHash> taken_;  // by where each begins
};

}  // namespace

std::vector<StockShape> stock_shapes(const Project& project,
                                     const Catalogue& catalogue,
                                     std::vector<Finding>& findings) {
    index_names(project.stock, SubjectKind::stock, {}, findings);
    std::vector<StockShape> shapes(project.stock.size());
    for (Index i = 0; i < project.stock.size(); ++i) {
        const Stock& stock = project.stock[i];
        const Subject subject{SubjectKind::stock, {}, stock.name};
        const Section* section = find_section(catalogue, stock.section);
        if (section == nullptr) {
            findings.push_back(
                left_out("unknown_section", subject,
                         "the catalogue has no section \"" + stock.section + "\"",
                         "choose one that it has" +
                             nearest_words(nearest_section_ids(catalogue, stock.section))));
            continue;
        }
        shapes[i] = stock_shape(catalogue, static_cast<Index>(section - catalogue.sections.data()));
        shapes[i].stock = i;
        if (find_alloy(catalogue, stock.alloy) == nullptr) {
            findings.push_back({.code = "unknown_alloy",
                                .severity = Severity::warning,
                                .concerns = {subject},
                                .what = "the catalogue has no alloy \"" + stock.alloy + "\"",
                                .mend = "choose one that it has, so that weights are right"});
        }
    }
    return shapes;
}

ResolvedFrame frame_values(const Frame& frame, Values& values) {
    ResolvedFrame placed;
    const Subject subject{SubjectKind::frame, {}, frame.name};
    for (std::size_t i = 0; i < 3; ++i) {
        placed.origin[i] = values.length(frame.origin[i], subject, "origin").value_or(0);
    }
    placed.quarter_turns = frame.quarter_turns & 3;
    placed.planes.reserve(frame.planes.size());
    for (const auto& plane : frame.planes) {
        const Subject where{SubjectKind::plane, frame.name, plane.name};
        placed.planes.push_back({plane.axis, values.length(plane.position, where, "position")});
    }
    return placed;
}

std::vector<Bar> bars_of(const Project& project,
                         const Frame& frame,
                         const ResolvedFrame& placed,
                         std::span<const StockShape> shapes,
                         Values& values,
                         std::vector<Finding>& findings) {
    const auto planes = index_names(frame.planes, SubjectKind::plane, frame.name, findings);
    index_names(frame.members, SubjectKind::member, frame.name, findings);
    std::unordered_map<std::string_view, Index> stocks;
    for (Index i = 0; i < project.stock.size(); ++i) stocks.emplace(project.stock[i].name, i);

    const Layout at{frame, placed, planes, stocks, shapes, values, findings};
    std::vector<Bar> bars;
    bars.reserve(frame.members.size());
    Places places(frame);
    for (Index i = 0; i < frame.members.size(); ++i) {
        const auto bar = bar_of(at, i);
        if (bar && places.take(*bar, findings)) bars.push_back(*bar);
    }
    run_on_at_roots(bars);
    return bars;
}

}  // namespace model
