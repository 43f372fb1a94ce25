// What may be tried with dimensions, names and the shop's settings.
#include "engine/measure/formula.h"
#include "model/mend/ways.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <string>
#include <utility>

namespace model {
namespace {

std::vector<const Dimension*> dimensions_of(const Case& of) {
    std::vector<const Dimension*> found;
    for (const auto& subject : of.finding.concerns) {
        if (subject.kind != SubjectKind::dimension) continue;
        if (const auto* dimension = named(of.project().dimensions, subject.name))
            found.push_back(dimension);
    }
    return found;
}

// Letters, digits and spaces, with a letter at its beginning.
std::string usable_name(const std::string& name) {
    std::string usable;
    for (const char c : name) {
        const auto letter = static_cast<unsigned char>(c);
        const bool is_space = c == ' ' && !usable.empty() && usable.back() != ' ';
        const bool is_digit = std::isdigit(letter) != 0 && !usable.empty();
        const bool is_kept = std::isalpha(letter) != 0 || is_digit || is_space;
        if (is_kept) usable += c;
    }
    while (!usable.empty() && usable.back() == ' ') usable.pop_back();
    if (!engine::is_name(usable)) usable = "size " + usable;
    return usable;
}

// "depth 2": the first of these that no thing has.
template <class Things>
std::string free_name(const Things& things, const std::string& name) {
    for (int i = 2;; ++i) {
        auto free = name + " " + std::to_string(i);
        if (std::ranges::none_of(things, [&](const auto& it) { return it.name == free; }))
            return free;
    }
}

// Renames the first of that name, and what refers to it follows: that is what counted before.
template <class Thing, class Put>
void rename(const std::vector<Thing>& things, const std::string& name, const Put& put, Ways& ways) {
    const auto* first = named(things, name);
    if (first == nullptr) return;
    Thing renamed = *first;
    renamed.name = free_name(things, name);
    const std::string words =
        "Call the first of them \"" + renamed.name + "\"; what refers to it follows";
    ways.push_back({"rename", words, {put(std::move(renamed))}});
}

void rename_in_frame(const Frame& frame, const Subject& subject, Ways& ways) {
    const auto& name = subject.name;
    const auto& in = frame.name;
    const auto put = [&](auto edit_of) {
        return [edit_of](auto thing) { return Edit{edit_of(std::move(thing))}; };
    };
    if (subject.kind == SubjectKind::plane)
        rename(frame.planes, name, put([&](Plane it) { return PutPlane{in, it, name}; }), ways);
    if (subject.kind == SubjectKind::bay)
        rename(frame.bays, name, put([&](Bay it) { return PutBay{in, it, name}; }), ways);
    if (subject.kind == SubjectKind::member)
        rename(frame.members, name, put([&](Member it) { return PutMember{in, it, name}; }), ways);
    if (subject.kind == SubjectKind::panel)
        rename(frame.panels, name, put([&](Panel it) { return PutPanel{in, it, name}; }), ways);
    if (subject.kind == SubjectKind::opening) {
        rename(frame.openings, name, put([&](MeasuredOpening it) {
                   return PutOpening{in, it, name};
               }),
               ways);
    }
}

struct Setting {
    std::string_view name;
    void (*reset)(Shop&);
};

template <auto field>
void reset(Shop& shop) {
    shop.*field = Shop{}.*field;
}

constexpr std::array settings{
    Setting{"kerf", reset<&Shop::kerf>},
    Setting{"end trim", reset<&Shop::end_trim>},
    Setting{"least held", reset<&Shop::least_held>},
    Setting{"least offcut", reset<&Shop::least_offcut>},
    Setting{"end gap", reset<&Shop::end_gap>},
    Setting{"graduation", reset<&Shop::graduation>},
    Setting{"nose radius", reset<&Shop::nose_radius>},
    Setting{"nose reach", reset<&Shop::nose_reach>},
    Setting{"housing radius", reset<&Shop::housing_radius>},
    Setting{"panel gap", reset<&Shop::panel_gap>},
    Setting{"panel pitch", reset<&Shop::panel_pitch>},
    Setting{"clearance", reset<&Shop::clearance>},
    Setting{"frame gap", reset<&Shop::frame_gap>},
    Setting{"gusset thickness", reset<&Shop::gusset_thickness>},
    Setting{"edge distance", reset<&Shop::edge_distance>},
    Setting{"pitch", reset<&Shop::pitch>},
    Setting{"fasteners per lap", reset<&Shop::per_lap>},
    Setting{"spare percentage", reset<&Shop::spare_percent>},
};

void set_shop(Ways& ways, std::string name, std::string words, Shop shop) {
    ways.push_back({std::move(name), std::move(words), {SetShop{std::move(shop)}}});
}

void unknown_words_out(const Case& of, Ways& ways) {
    const auto& shop = of.project().shop;
    const auto& code = of.finding.code;
    if (code == "unknown_recipe") {
        auto changed = shop;
        changed.recipe.clear();
        set_shop(ways, "usual recipe", "Let members meet by the staggered lap", changed);
    }
    if (code == "unknown_fastener") {
        auto changed = shop;
        changed.fastener.clear();
        set_shop(ways, "usual fastener", "Take fasteners by the thickness of the plates", changed);
    }
    if (code == "unknown_screw") {
        for (auto Shop::*field : {&Shop::screw, &Shop::foot_screw}) {
            auto changed = shop;
            (changed.*field).clear();
            set_shop(ways, "usual screw", "Take the screw by the rule", changed);
        }
    }
    if (code == "unknown_drill") {
        auto changed = shop;
        std::erase_if(changed.drills, [&](const std::string& drill) {
            return of.finding.what.find("\"" + drill + "\"") != std::string::npos;
        });
        set_shop(ways, "no such drill", "Take it off the list of drills at hand", changed);
    }
}

}  // namespace

Ways within_limits(const Case& of) {
    Ways ways;
    for (const auto* dimension : dimensions_of(of)) {
        for (const bool is_least : {true, false}) {
            const auto limit = length_of(of.finding, is_least ? "least" : "most");
            if (!limit) continue;
            const auto words = words_of(of, *limit);
            ways.push_back({"to limit",
                            "Set " + dimension->name + " to " + words,
                            {SetFormula{dimension->name, words}}});
            Dimension free = *dimension;
            (is_least ? free.least : free.most).reset();
            ways.push_back({"no limit",
                            std::string("Take away its ") + (is_least ? "least" : "most"),
                            {PutDimension{std::move(free), {}}}});
        }
    }
    return ways;
}

Ways other_name(const Case& of) {
    Ways ways;
    for (const auto& subject : of.finding.concerns) {
        const auto& name = subject.name;
        const auto& project = of.project();
        if (subject.kind == SubjectKind::dimension && of.finding.code == "bad_name") {
            if (const auto* dimension = named(project.dimensions, name)) {
                Dimension usable = *dimension;
                usable.name = usable_name(name);
                if (named(project.dimensions, usable.name) != nullptr)
                    usable.name = free_name(project.dimensions, usable.name);
                const auto words = "Call it \"" + usable.name + "\"";
                ways.push_back({"rename", words, {PutDimension{std::move(usable), name}}});
            }
            continue;
        }
        if (subject.kind == SubjectKind::dimension)
            rename(
                project.dimensions, name,
                [&](Dimension it) {
                    return PutDimension{std::move(it), name};
                },
                ways);
        if (subject.kind == SubjectKind::stock)
            rename(
                project.stock, name,
                [&](Stock it) {
                    return PutStock{std::move(it), name};
                },
                ways);
        if (subject.kind == SubjectKind::obstacle)
            rename(
                project.room, name,
                [&](Obstacle it) {
                    return PutObstacle{std::move(it), name};
                },
                ways);
        if (subject.kind == SubjectKind::frame)
            rename(
                project.frames, name,
                [&](Frame it) {
                    return PutFrame{std::move(it), name};
                },
                ways);
        if (const auto* frame = frame_named(of, subject.frame))
            rename_in_frame(*frame, subject, ways);
    }
    for (auto& way : no_entry(of)) ways.push_back(std::move(way));
    return ways;
}

Ways usual_setting(const Case& of) {
    Ways ways;
    for (const auto& subject : of.finding.concerns) {
        if (subject.kind == SubjectKind::frame) {
            ways.push_back(
                {"usual recipe", "Join it as the shop does", {SetFrameRecipe{subject.name, {}}}});
        }
        if (subject.kind != SubjectKind::shop) continue;
        for (const auto& setting : settings) {
            if (setting.name != subject.name) continue;
            auto shop = of.project().shop;
            setting.reset(shop);
            set_shop(ways, "usual setting", "Use the usual " + subject.name, shop);
        }
        unknown_words_out(of, ways);
    }
    for (auto& way : plain_joint(of)) ways.push_back(std::move(way));
    for (auto& way : other_panel(of)) ways.push_back(std::move(way));
    return ways;
}

// Of a formula that cannot be worked out: the shop's usual value; of a dimension that nothing
// refers to, none at all.
Ways plain_value(const Case& of) {
    Ways ways;
    for (const auto& subject : of.finding.concerns) {
        if (subject.kind == SubjectKind::shop) return usual_setting(of);
    }
    for (const auto* dimension : dimensions_of(of)) {
        ways.push_back({"take out " + dimension->name,
                        "Take out dimension " + dimension->name,
                        {RemoveDimension{dimension->name}}});
    }
    return ways;
}

}  // namespace model
