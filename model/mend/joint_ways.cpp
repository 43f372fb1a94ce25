// What may be tried at joints: other recipes, other fasteners, other holds.
#include "model/mend/ways.h"
#include "model/resolve/recipe.h"

#include <algorithm>
#include <string>
#include <type_traits>
#include <utility>

namespace model {
namespace {

void append(Ways& ways, Ways more) {
    for (auto& way : more) ways.push_back(std::move(way));
}

// "blind rivet 1/8" of "no drill at hand makes the hole for blind rivet 1/8": the longest id that
// is named.
template <class Thing>
const Thing* named_in(const std::string& text, const std::vector<Thing>& things) {
    const Thing* found = nullptr;
    for (const auto& thing : things) {
        if (text.find(thing.id) == std::string::npos) continue;
        if (found == nullptr || thing.id.size() > found->id.size()) found = &thing;
    }
    return found;
}

void take_fastener(const Case& of, Ways& ways, const std::string& id) {
    change_joints(of, ways, "fastener " + id, "Take " + id,
                  [&](JointOverride& joint) { joint.fastener = id; });
}

void usual_fastener(const Case& of, Ways& ways) {
    change_joints(of, ways, "usual fastener", "Take the fastener by the thickness of the plates",
                  [](JointOverride& joint) { joint.fastener.reset(); });
}

// For all joints that say nothing else.
void take_fastener_everywhere(const Case& of, Ways& ways, const std::string& id) {
    auto shop = of.project().shop;
    shop.fastener = id;
    ways.push_back({"fastener everywhere " + id,
                    "Take " + id + " for the whole project",
                    {SetShop{std::move(shop)}}});
}

// A third of all joints or more have the same fault: not they are wrong but what is asked of all.
bool is_common(const Case& of) {
    const auto& resolved = of.ailing.resolved;
    const auto alike = std::ranges::count(resolved.findings, of.finding.code, &Finding::code);
    return 3 * static_cast<std::size_t>(alike) >= resolved.joints.size();
}

// The system of what the finding names; without that, of the first frame's stock.
template <class Thing>
MeasureSystem system_of(const Case& of, const std::vector<Thing>& things) {
    const auto* named = named_in(of.finding.what, things);
    if (named != nullptr) return named->system;
    for (const auto& stock : of.project().stock) {
        const auto* section = find_section(of.catalogue(), stock.section);
        if (section != nullptr) return section->system;
    }
    return MeasureSystem::inch;
}

template <class Thing>
void take_thinner(const Case& of, Ways& ways, const std::vector<Thing>& things) {
    const auto diameter = length_of(of.finding, "diameter");
    const auto* now = named_in(of.finding.what, things);
    if (!diameter && now == nullptr) return;
    const auto than = now != nullptr ? now->diameter : *diameter;
    const auto system = system_of(of, things);
    std::vector<const Thing*> thinner;
    for (const auto& thing : things) {
        if (thing.system == system && thing.diameter < than) thinner.push_back(&thing);
    }
    std::ranges::stable_sort(
        thinner, [](const Thing* a, const Thing* b) { return a->diameter > b->diameter; });
    // Screws are chosen for all joints elsewhere.
    if (std::is_same_v<Thing, BlindRivet> && is_common(of)) {
        for (const auto* thing : thinner) take_fastener_everywhere(of, ways, thing->id);
    }
    for (const auto* thing : thinner) take_fastener(of, ways, thing->id);
}

bool is_screwed(const Case& of) {
    const auto joints = joints_of(of);
    return std::ranges::any_of(
        joints, [&](const FrameJoint& joint) { return stated_joint(of, joint).removable; });
}

// A tape of fractions with marks so fine; nothing where none has them.
std::optional<engine::TapeStyle> with_marks_of(engine::TapeStyle shown, engine::Length mark) {
    constexpr int finest = 64;
    const bool is_fraction = shown.form == engine::TapeForm::inch_fraction ||
                             shown.form == engine::TapeForm::feet_inches;
    while (is_fraction && shown.denominator < finest && mark < engine::tape_step(shown))
        shown.denominator *= 2;
    if (mark < engine::tape_step(shown)) return std::nullopt;
    return shown;
}

void finer_marks(const Case& of, Ways& ways) {
    const Nm mark = of.ailing.resolved.shop.graduation;
    if (mark < 2) return;
    const auto half = engine::Length::from_nm(mark / 2);
    auto shop = of.project().shop;
    shop.graduation = words_of(of, half);
    Mend way{"finer marks", "Lay holes on marks of " + words_of(of, half), {}};
    way.edits.emplace_back(SetShop{std::move(shop)});
    // What is laid finer than the tape reads would be read off it rounded.
    const auto shown = with_marks_of(of.project().shown, half);
    if (shown && *shown != of.project().shown) {
        way.words += " and show as fine a tape";
        way.edits.emplace_back(SetShown{*shown});
    }
    ways.push_back(std::move(way));
}

void add_drill(const Case& of, Ways& ways, const std::string& drill) {
    auto shop = of.project().shop;
    if (drill.empty() || std::ranges::find(shop.drills, drill) != shop.drills.end()) return;
    shop.drills.push_back(drill);
    ways.push_back({"drill " + drill,
                    "Get drill " + drill + ": count it among those at hand",
                    {SetShop{std::move(shop)}}});
}

}  // namespace

Ways other_recipes(const Case& of) {
    Ways ways;
    for (const auto& recipe : recipes()) {
        if (!recipe.is_chosen) continue;
        const std::string name(recipe.name);
        change_joints(of, ways, "recipe " + name, "Join by " + name,
                      [&](JointOverride& joint) { joint.recipe = name; });
    }
    return ways;
}

Ways other_fasteners(const Case& of) {
    Ways ways;
    if (is_screwed(of)) {
        take_thinner(of, ways, of.catalogue().screws);
    } else {
        take_thinner(of, ways, of.catalogue().rivets);
    }
    append(ways, other_recipes(of));
    if (of.finding.code == "too_few_fasteners" || of.finding.code == "fasteners_meet") {
        finer_marks(of, ways);
        const int fits = static_cast<int>(number_of(of.finding, "fits").value_or(1.0));
        if (fits >= 1) {
            change_joints(of, ways, "fewer",
                          "Let " + std::to_string(fits) + " in a lap be enough here",
                          [&](JointOverride& joint) { joint.count = fits; });
        }
    }
    return ways;
}

Ways thicker_fasteners(const Case& of) {
    Ways ways;
    const auto system = system_of(of, of.catalogue().rivets);
    for (const auto& rivet : of.catalogue().rivets) {
        if (rivet.system == system) take_fastener(of, ways, rivet.id);
    }
    return ways;
}

// The joint's own fastener may have suited before its bars were changed: then the rule chooses
// well.
Ways other_grips(const Case& of) {
    Ways ways;
    usual_fastener(of, ways);
    append(ways, thicker_fasteners(of));
    return ways;
}

Ways other_holds(const Case& of) {
    Ways ways;
    constexpr std::array<std::pair<ScrewHold, const char*>, 3> holds{
        {{ScrewHold::nut, "Hold the screws with nuts"},
         {ScrewHold::rivet_nut, "Hold the screws with rivet nuts"},
         {ScrewHold::tapped, "Tap threads into the far plate"}}};
    for (const auto& [hold, words] : holds) {
        const auto value = hold;
        change_joints(of, ways, "hold " + std::string(words), words,
                      [&](JointOverride& joint) { joint.screw_hold = value; });
    }
    const auto system = system_of(of, of.catalogue().screws);
    for (const auto& screw : of.catalogue().screws) {
        if (screw.system == system) take_fastener(of, ways, screw.id);
    }
    change_joints(of, ways, "stays together", "Rivet it: it does not come apart",
                  [](JointOverride& joint) {
                      joint.removable = false;
                      joint.fastener.reset();
                  });
    return ways;
}

Ways drills_to_get(const Case& of) {
    Ways ways;
    const auto& text = of.finding.mend;
    for (const auto& drill : of.catalogue().drills) {
        const auto at = text.find("drill " + drill.name);
        if (at == std::string::npos) continue;
        const auto end = at + 6 + drill.name.size();
        const bool is_whole = end == text.size() || text[end] == ',' || text[end] == ' ' ||
                              text[end] == ')' || text[end] == ';';
        if (is_whole) add_drill(of, ways, drill.name);
    }
    append(ways, thicker_fasteners(of));
    append(ways, other_holds(of));
    return ways;
}

Ways plain_joint(const Case& of) {
    Ways ways;
    change_joints(of, ways, "no recipe", "Join it as the rest of the frame is",
                  [](JointOverride& joint) { joint.recipe.reset(); });
    change_joints(of, ways, "usual count", "Take as many fasteners as elsewhere",
                  [](JointOverride& joint) { joint.count.reset(); });
    usual_fastener(of, ways);
    change_joints(of, ways, "stays together", "Rivet it: it does not come apart",
                  [](JointOverride& joint) { joint.removable = false; });
    return ways;
}

Ways no_entry(const Case& of) {
    Mend mend{"no entry", "Take out what is stated for it", {}};
    for (const auto& joint : joints_of(of)) {
        mend.edits.emplace_back(RemoveJoint{joint.frame, joint.members});
    }
    if (mend.edits.empty()) return {};
    return {std::move(mend)};
}

Ways comes_apart(const Case& of) {
    Ways ways = other_recipes(of);
    const auto joints = joints_of(of);
    for (std::size_t i = 0; i < joints.size() && i < 8; ++i) {
        auto joint = stated_joint(of, joints[i]);
        joint.removable = true;
        joint.fastener.reset();
        ways.push_back({"apart " + std::to_string(i + 1),
                        "Screw " + joints[i].members[0] + " + " + joints[i].members[1] +
                            ", so that it comes apart",
                        {PutJoint{joints[i].frame, std::move(joint)}}});
    }
    return ways;
}

}  // namespace model
