// What may be tried where something refers to what is not there, or lies where it cannot: another
// stock, other planes, another place, or taking it out.
#include "model/mend/ways.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr std::size_t most_of_a_kind = 4;

// As many letters as two names have in common at their beginnings.
std::size_t likeness(const std::string& a, const std::string& b) {
    const auto end = std::ranges::mismatch(a, b);
    return static_cast<std::size_t>(end.in1 - a.begin());
}

// A reference to a plane that must lie across an axis.
struct PlaneUse {
    std::string* plane = nullptr;
    Axis axis = Axis::x;
};

std::vector<PlaneUse> planes_used(Member& member) {
    const auto axes = across(member.run);
    return {{&member.on[0], axes[0]},
            {&member.on[1], axes[1]},
            {&member.from, member.run},
            {&member.to, member.run}};
}

std::vector<PlaneUse> planes_used(Bay& bay) {
    std::vector<PlaneUse> used;
    for (std::size_t k = 0; k < 2; ++k) used.push_back({&bay.x[k], Axis::x});
    for (std::size_t k = 0; k < 2; ++k) used.push_back({&bay.y[k], Axis::y});
    for (std::size_t k = 0; k < 2; ++k) used.push_back({&bay.z[k], Axis::z});
    return used;
}

// Of what stands between nodes: the face tells the other axes, where it is known.
template <class Bar>
std::vector<PlaneUse> planes_between(const Frame& frame, Bar& bar) {
    const auto* face = named(frame.planes, bar.face);
    if (face == nullptr) return {};
    const auto axes = across(face->axis);
    std::vector<PlaneUse> used;
    for (std::size_t k = 0; k < 2; ++k) {
        used.push_back({&bar.from[k], axes[k]});
        used.push_back({&bar.to[k], axes[k]});
    }
    return used;
}

bool is_wrong(const Frame& frame, const PlaneUse& use) {
    const auto* plane = named(frame.planes, *use.plane);
    return plane == nullptr || plane->axis != use.axis;
}

std::vector<std::string> planes_across(const Frame& frame, Axis axis, const std::string& like) {
    std::vector<std::string> names;
    for (const auto& plane : frame.planes) {
        if (plane.axis == axis) names.push_back(plane.name);
    }
    std::ranges::stable_sort(names, [&](const std::string& a, const std::string& b) {
        return likeness(a, like) > likeness(b, like);
    });
    if (names.size() > most_of_a_kind) names.resize(most_of_a_kind);
    return names;
}

// Puts one plane in the place of the first wrong one.
template <class Thing, class Used, class Put>
void choose_plane(
    const Frame& frame, const Thing& thing, const Used& used, const Put& put, Ways& ways) {
    Thing probe = thing;
    for (std::size_t i = 0; i < used(probe).size(); ++i) {
        const auto use = used(probe)[i];
        if (!is_wrong(frame, use)) continue;
        for (const auto& name : planes_across(frame, use.axis, *use.plane)) {
            Thing changed = thing;
            *used(changed)[i].plane = name;
            ways.push_back(
                {"plane " + name,
                 "Let it refer to plane \"" + name + "\" instead of \"" + *use.plane + "\"",
                 {put(std::move(changed))}});
        }
        return;
    }
}

Sense other(Sense sense) { return sense == Sense::plus ? Sense::minus : Sense::plus; }

void other_side(const Frame& frame, const Diagonal& diagonal, Ways& ways) {
    Diagonal turned = diagonal;
    const bool is_inside = turned.side == FaceSide::inside;
    turned.side = is_inside ? FaceSide::outside : FaceSide::inside;
    ways.push_back({"other side",
                    std::string("Put brace ") + turned.name + " on the " +
                        (is_inside ? "outside" : "inside") + " of the face",
                    {PutDiagonal{frame.name, std::move(turned), {}}}});
    Diagonal shaped = diagonal;
    const bool is_square = shaped.ends == BraceEnds::square;
    shaped.ends = is_square ? BraceEnds::outline : BraceEnds::square;
    ways.push_back({"other ends",
                    std::string("Cut the ends of brace ") + shaped.name +
                        (is_square ? " to the outline" : " square"),
                    {PutDiagonal{frame.name, std::move(shaped), {}}}});
}

void other_leg(const Frame& frame, const Leaning& leaning, Ways& ways) {
    Leaning turned = leaning;
    turned.leg = other(turned.leg);
    ways.push_back({"other leg",
                    "Let the leg of " + turned.name + " point the other way",
                    {PutLeaning{frame.name, std::move(turned), {}}}});
}

bool is_of_form(const Case& of, const Stock& stock, SectionForm form) {
    const auto* section = find_section(of.catalogue(), stock.section);
    return section != nullptr && section->form == form;
}

template <class Bar, class Put>
void stocks_for(const Case& of, const Bar& bar, SectionForm form, const Put& put, Ways& ways) {
    for (const auto& stock : of.project().stock) {
        if (stock.name == bar.stock || !is_of_form(of, stock, form)) continue;
        Bar changed = bar;
        changed.stock = stock.name;
        ways.push_back({"stock " + stock.name,
                        "Make " + bar.name + " of " + stock.name,
                        {put(std::move(changed))}});
    }
}

// Calls back with what the subject names among the frames' things.
template <class Visit>
void each_stated(const Case& of, const Visit& visit) {
    for (const auto& subject : of.finding.concerns) {
        const auto* frame = frame_named(of, subject.frame);
        if (frame == nullptr) continue;
        const auto show = [&](const auto& things, SubjectKind kind) {
            if (subject.kind != kind) return;
            if (const auto* thing = named(things, subject.name)) visit(*frame, *thing);
        };
        show(frame->members, SubjectKind::member);
        show(frame->diagonals, SubjectKind::diagonal);
        show(frame->leaning, SubjectKind::leaning);
        show(frame->bays, SubjectKind::bay);
        show(frame->panels, SubjectKind::panel);
        show(frame->loads, SubjectKind::load);
    }
}

struct PlaceWays {
    const Case& of;
    Ways& ways;

    void operator()(const Frame& frame, const Diagonal& diagonal) const {
        other_side(frame, diagonal, ways);
        stocks_for(
            of, diagonal, SectionForm::flat,
            [&](Diagonal d) {
                return PutDiagonal{frame.name, std::move(d), {}};
            },
            ways);
    }
    void operator()(const Frame& frame, const Leaning& leaning) const {
        other_leg(frame, leaning, ways);
        stocks_for(
            of, leaning, SectionForm::angle,
            [&](Leaning l) {
                return PutLeaning{frame.name, std::move(l), {}};
            },
            ways);
    }
    template <class Thing>
    void operator()(const Frame&, const Thing&) const {}
};

struct PlaneWays {
    Ways& ways;

    void operator()(const Frame& frame, const Member& member) const {
        choose_plane(
            frame, member, [](Member& m) { return planes_used(m); },
            [&](Member m) {
                return PutMember{frame.name, std::move(m), {}};
            },
            ways);
    }
    void operator()(const Frame& frame, const Bay& bay) const {
        choose_plane(
            frame, bay, [](Bay& b) { return planes_used(b); },
            [&](Bay b) {
                return PutBay{frame.name, std::move(b), {}};
            },
            ways);
    }
    void operator()(const Frame& frame, const Diagonal& diagonal) const {
        choose_plane(
            frame, diagonal, [&](Diagonal& d) { return planes_between(frame, d); },
            [&](Diagonal d) {
                return PutDiagonal{frame.name, std::move(d), {}};
            },
            ways);
    }
    void operator()(const Frame& frame, const Leaning& leaning) const {
        choose_plane(
            frame, leaning, [&](Leaning& l) { return planes_between(frame, l); },
            [&](Leaning l) {
                return PutLeaning{frame.name, std::move(l), {}};
            },
            ways);
    }
    template <class Thing>
    void operator()(const Frame&, const Thing&) const {}
};

struct StockWays {
    const Case& of;
    Ways& ways;

    void operator()(const Frame& frame, const Member& member) const {
        for (const auto& stock : of.project().stock) {
            if (ways.size() == most_of_a_kind) return;
            ways.push_back({"stock " + stock.name,
                            "Make it of " + stock.name,
                            {SetMemberStock{frame.name, {member.name}, stock.name}}});
        }
    }
    void operator()(const Frame& frame, const Diagonal& it) const {
        PlaceWays{of, ways}(frame, it);
    }
    void operator()(const Frame& frame, const Leaning& it) const { PlaceWays{of, ways}(frame, it); }
    template <class Thing>
    void operator()(const Frame&, const Thing&) const {}
};

struct TakeOut {
    Ways& ways;

    void push(std::string_view what, const std::string& name, Edit edit) const {
        ways.push_back(
            {"take out " + name, "Take out " + std::string(what) + " " + name, {std::move(edit)}});
    }
    void operator()(const Frame& frame, const Member& it) const {
        push("member", it.name, RemoveMember{frame.name, it.name});
    }
    void operator()(const Frame& frame, const Diagonal& it) const {
        push("brace", it.name, RemoveDiagonal{frame.name, it.name});
    }
    void operator()(const Frame& frame, const Leaning& it) const {
        push("leaning member", it.name, RemoveLeaning{frame.name, it.name});
    }
    void operator()(const Frame& frame, const Bay& it) const {
        push("bay", it.name, RemoveBay{frame.name, it.name});
    }
    void operator()(const Frame& frame, const Panel& it) const {
        push("panel", it.name, RemovePanel{frame.name, it.name});
    }
    void operator()(const Frame& frame, const Load& it) const {
        push("load", it.name, RemoveLoad{frame.name, it.name});
    }
};

}  // namespace

// The last of several comes first: where one lies in the place of another it is the one left out.
Ways take_out(const Case& of) {
    Ways ways;
    each_stated(of, TakeOut{ways});
    std::ranges::reverse(ways);
    return ways;
}

Ways take_out_together(const Case& of) {
    constexpr std::size_t most = 8;
    auto ways = take_out(of);
    if (ways.size() < 2 || ways.size() > most) return ways.size() > most ? Ways{} : ways;
    Mend all{"take out", "Take out these " + std::to_string(ways.size()), {}};
    for (auto& way : ways) all.edits.push_back(std::move(way.edits.front()));
    return {std::move(all)};
}

Ways drills_or_take_out(const Case& of) {
    auto ways = other_holds(of);
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

Ways other_place(const Case& of) {
    Ways ways;
    each_stated(of, PlaceWays{of, ways});
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

Ways other_planes(const Case& of) {
    Ways ways;
    each_stated(of, PlaneWays{ways});
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

Ways other_stock(const Case& of) {
    Ways ways;
    each_stated(of, StockWays{of, ways});
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

}  // namespace model
