#include "tests/support/random_project.h"

#include "model/project/edit.h"
#include "model/resolve/recipe.h"

#include "tests/support/leaning_side.h"
#include "tests/support/random_frames.h"
#include "tests/support/random_panels.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace tests {
namespace {

using model::SectionForm;

struct Size {
    SectionForm form;
    Nm a;
    Nm b;
    Nm thickness;
    bool filleted = false;
};

// Angles first: the first three of each list are what most frames are made of.
constexpr std::array<Size, 16> inch_sizes{{
    {SectionForm::angle, inches(1), inches(1), inches_64(8)},
    {SectionForm::angle, inches_64(96), inches_64(96), inches_64(8)},
    {SectionForm::angle, inches_64(48), inches_64(48), inches_64(8)},
    {SectionForm::angle, inches_64(80), inches_64(80), inches_64(8)},
    {SectionForm::angle, inches(1), inches(1), inches_64(4)},
    {SectionForm::angle, inches(1), inches(1), inches_64(12)},
    {SectionForm::angle, inches_64(96), inches(1), inches_64(8)},
    {SectionForm::angle, inches(2), inches(1), inches_64(8)},
    {SectionForm::angle, inches(1), inches(1), inches_64(8), true},
    {SectionForm::angle, inches(2), inches_64(96), inches_64(8), true},
    {SectionForm::flat, inches(1), 0, inches_64(8)},
    {SectionForm::flat, inches_64(96), 0, inches_64(8)},
    {SectionForm::flat, inches(2), 0, inches_64(12)},
    {SectionForm::channel, inches_64(96), inches_64(48), inches_64(8)},
    {SectionForm::channel, inches(1), inches(1), inches_64(8)},
    {SectionForm::tube, inches(1), inches(1), inches_64(8)},
}};

constexpr std::array<Size, 11> metric_sizes{{
    {SectionForm::angle, millimetres(30), millimetres(30), millimetres(3)},
    {SectionForm::angle, millimetres(25), millimetres(25), millimetres(3)},
    {SectionForm::angle, millimetres(20), millimetres(20), millimetres(2)},
    {SectionForm::angle, millimetres(40), millimetres(20), millimetres(2)},
    {SectionForm::angle, millimetres(40), millimetres(30), millimetres(3)},
    {SectionForm::angle, millimetres(50), millimetres(30), millimetres(5)},
    {SectionForm::flat, millimetres(25), 0, millimetres(3)},
    {SectionForm::flat, millimetres(40), 0, millimetres(3)},
    {SectionForm::channel, millimetres(30), millimetres(15), millimetres(2)},
    {SectionForm::channel, millimetres(40), millimetres(20), millimetres(2)},
    {SectionForm::tube, millimetres(25), millimetres(25), millimetres(2)},
}};

// The stock of one project: at least one entry, the first an angle.
template <class Sizes>
std::vector<model::Stock> random_stock(
    Dice& dice, const Sizes& sizes, bool metric, bool mixed, const model::Catalogue& catalogue) {
    std::vector<model::Stock> stock;
    const std::uint32_t count = mixed ? 2 + dice.below(3) : 1;
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto choices = static_cast<std::uint32_t>(sizes.size());
        const std::uint32_t usual = mixed ? 6 : 10;
        const Size& size = sizes[i == 0 ? dice.below(dice.chance(60) ? 3 : 5)
                                        : dice.below(dice.chance(50) ? usual : choices)];
        const std::string id =
            section_id(catalogue, size.form, size.a, size.b, size.thickness, size.filleted);
        const auto* section = model::find_section(catalogue, id);
        const bool is_known = std::any_of(stock.begin(), stock.end(),
                                          [&](const auto& one) { return one.section == id; });
        if (section == nullptr || is_known) continue;
        stock.push_back(
            stock_of("stock " + std::to_string(i + 1), id, section->usual_alloy, metric));
    }
    return stock;
}

Role random_role(Dice& dice, const std::vector<model::Stock>& stock) {
    Role role;
    role.stock = dice.one_of(stock).name;
    role.turned = dice.chance(25);
    return role;
}

Roles random_roles(Dice& dice, const std::vector<model::Stock>& stock) {
    Roles roles;
    roles.posts = random_role(dice, stock);
    roles.x_rails = random_role(dice, stock);
    roles.y_rails = random_role(dice, stock);
    roles.dividers = random_role(dice, stock);
    roles.mid_rails = random_role(dice, stock);
    return roles;
}

Ruler random_ruler(Dice& dice, bool metric) {
    constexpr std::array<Nm, 5> inch_steps{inches_64(1), inches_64(2), inches_64(4), inches(1),
                                           millimetres(1) / 10};
    constexpr std::array<Nm, 4> metric_steps{millimetres(1), millimetres(5), millimetres(1) / 100,
                                             1};
    Ruler ruler;
    ruler.step = metric ? dice.one_of(metric_steps) : dice.one_of(inch_steps);
    return ruler;
}

model::Shop random_shop(Dice& dice, bool metric) {
    model::Shop shop;
    if (metric) {
        shop.kerf = "2.4 mm";
        shop.end_trim = "12 mm";
        shop.end_gap = "1 mm";
        shop.graduation = "1 mm";
        shop.nose_radius = "5.5 mm";
    } else if (dice.chance(20)) {
        shop.end_gap = dice.chance(50) ? "1/64 in" : "1/16 in";
    }
    if (dice.chance(25)) {
        constexpr std::array<const char*, 3> inch_rivets{"blind rivet 3/32", "blind rivet 1/8",
                                                         "blind rivet 5/32"};
        constexpr std::array<const char*, 3> metric_rivets{
            "blind rivet 2.4 mm", "blind rivet 3.2 mm", "blind rivet 4.0 mm"};
        shop.fastener = metric ? dice.one_of(metric_rivets) : dice.one_of(inch_rivets);
    }
    if (dice.chance(25)) shop.per_lap = 1 + static_cast<int>(dice.below(3));
    return shop;
}

// Some joints that differ: another fastener, another count, or to come apart.
void add_overrides(Dice& dice, model::Frame& frame, bool metric) {
    const std::uint32_t count = dice.below(4);
    for (std::uint32_t i = 0; i < count; ++i) {
        model::JointOverride joint;
        joint.members[0] = dice.one_of(frame.members).name;
        joint.members[1] = dice.one_of(frame.members).name;
        joint.removable = dice.chance(40);
        if (dice.chance(50)) joint.count = static_cast<int>(dice.below(4));
        if (dice.chance(30)) {
            joint.fastener = metric ? "machine screw M4" : "machine screw 8-32";
        }
        if (joint.members[0] != joint.members[1]) frame.joints.push_back(joint);
    }
}

// What holds the screws of joints that come apart, and which screws they are.
void choose_screws(Dice& dice, model::Project& project, bool metric) {
    constexpr std::array<model::ScrewHold, 3> holds{model::ScrewHold::tapped, model::ScrewHold::nut,
                                                    model::ScrewHold::rivet_nut};
    // Thin ones twice as often: only they leave room for nuts in small angle.
    constexpr std::array<const char*, 6> inch_screws{"machine screw 4-40",  "machine screw 4-40",
                                                     "machine screw 6-32",  "machine screw 6-32",
                                                     "machine screw 10-32", "machine screw 1/4-20"};
    constexpr std::array<const char*, 6> metric_screws{"machine screw M3", "machine screw M3",
                                                       "machine screw M4", "machine screw M4",
                                                       "machine screw M5", "machine screw M6"};
    auto& shop = project.shop;
    if (dice.chance(50))
        shop.screw = metric ? dice.one_of(metric_screws) : dice.one_of(inch_screws);
    shop.screw_hold = dice.one_of(holds);
    if (!shop.screw.empty() && dice.chance(20)) shop.fastener = shop.screw;
    for (auto& frame : project.frames) {
        for (auto& joint : frame.joints) {
            if (dice.chance(60)) joint.screw_hold = dice.one_of(holds);
        }
    }
}

// How members meet: of half the projects something else than the staggered lap, for all of it, for
// a frame, or for some joints.
void choose_recipes(Dice& dice,
                    model::Project& project,
                    bool metric,
                    const model::Catalogue& catalogue) {
    if (dice.chance(50)) return;
    // Narrow flat bar for straps that fit between the legs of small angle.
    const std::string flat =
        section_id(catalogue, SectionForm::flat, metric ? millimetres(20) : inches_64(48), 0,
                   metric ? millimetres(3) : inches_64(8));
    const auto* section = model::find_section(catalogue, flat);
    if (section != nullptr) {
        project.stock.push_back(stock_of("straps", flat, section->usual_alloy, metric));
    }
    std::vector<std::string> names;
    for (const auto& recipe : model::recipes()) {
        if (recipe.is_chosen) names.emplace_back(recipe.name);
    }
    if (dice.chance(40)) project.shop.recipe = dice.one_of(names);
    for (auto& frame : project.frames) {
        if (dice.chance(40)) frame.recipe = dice.one_of(names);
        for (auto& joint : frame.joints) {
            if (dice.chance(40)) joint.recipe = dice.one_of(names);
        }
        const auto count = static_cast<std::uint32_t>(frame.members.size());
        for (std::uint32_t i = dice.below(12); i > 0 && count > 1; --i) {
            const auto a = dice.below(count);
            const auto b = dice.below(count);
            if (a == b) continue;
            frame.joints.push_back({.members = {frame.members[a].name, frame.members[b].name},
                                    .recipe = dice.one_of(names)});
        }
    }
}

// Bars so short that some members have to be spliced, and in some projects flat bar to back them.
void shorten_bars(Dice& dice, model::Project& project, bool metric) {
    if (!dice.chance(25)) return;
    constexpr std::array<const char*, 4> inch_flats{"flat 3/4 x 1/8", "flat 1/2 x 1/8",
                                                    "flat 1 x 3/16", "flat 1 1/2 x 1/8"};
    constexpr std::array<const char*, 4> metric_flats{"flat 20 x 2 mm", "flat 20 x 3 mm",
                                                      "flat 15 x 3 mm", "flat 30 x 3 mm"};
    for (auto& stock : project.stock) {
        const Nm length = inches_64(dice.between(20 * 64, 50 * 64));
        stock.bars = {{formula_of(length), std::nullopt, std::nullopt}};
        if (dice.chance(20)) stock.offcuts = {{formula_of(length + inches(10)), 2}};
    }
    if (!dice.chance(70)) return;
    const char* flat = metric ? dice.one_of(metric_flats) : dice.one_of(inch_flats);
    project.stock.push_back(stock_of("backing", flat, "6063-T52", metric));
}

// Feet at some ends, of posts above all; some posts run on below the rails to make room for them.
void ask_for_feet(Dice& dice, model::Project& project) {
    if (!dice.chance(30)) return;
    for (auto& frame : project.frames) {
        for (auto& member : frame.members) {
            const bool is_post = member.run == model::Axis::z;
            if (!dice.chance(is_post ? 60 : 10)) continue;
            member.foot_from = dice.chance(80);
            member.foot_to = dice.chance(25);
            const Nm below = inches_64(dice.between(64, 4 * 64));
            if (is_post && dice.chance(70)) member.allowance_from = "-" + formula_of(below);
        }
    }
}

// A flat of its own for the braces; now and then they are to be cut from what is no flat.
std::string brace_stock(Dice& dice,
                        model::Project& project,
                        bool metric,
                        const model::Catalogue& catalogue) {
    if (dice.chance(5)) return project.stock[0].name;
    const auto id =
        metric ? section_id(catalogue, SectionForm::flat,
                            dice.chance(50) ? millimetres(25) : millimetres(40), 0, millimetres(3))
               : section_id(catalogue, SectionForm::flat,
                            dice.chance(50) ? inches(1) : inches_64(96), 0, inches_64(8));
    const auto* section = model::find_section(catalogue, id);
    if (section == nullptr) return project.stock[0].name;
    for (const auto& stock : project.stock) {
        if (stock.section == id) return stock.name;
    }
    project.stock.push_back(stock_of("brace stock", id, section->usual_alloy, metric));
    return project.stock.back().name;
}

// Diagonals from one node of a face to another, as they come: many find no hold, and say so.
void add_braces(Dice& dice,
                model::Project& project,
                bool metric,
                const model::Catalogue& catalogue) {
    const auto stock = brace_stock(dice, project, metric, catalogue);
    for (auto& frame : project.frames) {
        std::array<std::vector<std::string>, 3> planes;
        for (const auto& plane : frame.planes) {
            planes[model::index_of(plane.axis)].push_back(plane.name);
        }
        if (planes[0].empty() || planes[1].empty() || planes[2].empty()) continue;
        const std::uint32_t count = 1 + dice.below(3);
        for (std::uint32_t i = 0; i < count; ++i) {
            const auto face = static_cast<model::Axis>(dice.below(3));
            const auto axes = model::across(face);
            const auto& first = planes[model::index_of(axes[0])];
            const auto& second = planes[model::index_of(axes[1])];
            const bool rises = dice.chance(50);
            const bool is_whole = dice.chance(60);
            model::Diagonal diagonal{.name = "strut " + std::to_string(i + 1), .stock = stock};
            diagonal.face = dice.chance(50) ? planes[model::index_of(face)].front()
                                            : dice.one_of(planes[model::index_of(face)]);
            const std::string from = is_whole ? first.front() : dice.one_of(first);
            const std::string to = is_whole ? first.back() : dice.one_of(first);
            const std::string low = is_whole ? second.front() : dice.one_of(second);
            const std::string high = is_whole ? second.back() : dice.one_of(second);
            diagonal.from = {from, rises ? low : high};
            diagonal.to = {to, rises ? high : low};
            diagonal.side = dice.chance(60) ? model::FaceSide::outside : model::FaceSide::inside;
            diagonal.ends = dice.chance(60) ? model::BraceEnds::outline : model::BraceEnds::square;
            frame.diagonals.push_back(diagonal);
        }
    }
}

// Leaning members from one node of a face to another, as they come, and a cabinet of its own whose
// back leans.
void add_leaning(Dice& dice, model::Project& project, const Ruler& ruler) {
    if (dice.chance(40)) {
        for (auto& frame : project.frames) {
            std::array<std::vector<std::string>, 3> planes;
            for (const auto& plane : frame.planes) {
                planes[model::index_of(plane.axis)].push_back(plane.name);
            }
            if (planes[0].empty() || planes[1].empty() || planes[2].empty()) continue;
            const auto face = static_cast<model::Axis>(dice.below(3));
            const auto axes = model::across(face);
            const auto& first = planes[model::index_of(axes[0])];
            const auto& second = planes[model::index_of(axes[1])];
            model::Leaning leaning{.name = "lean", .stock = dice.one_of(project.stock).name};
            leaning.face = dice.one_of(planes[model::index_of(face)]);
            leaning.from[0] = dice.one_of(first);
            leaning.from[1] = dice.one_of(second);
            leaning.to[0] = dice.one_of(first);
            leaning.to[1] = dice.one_of(second);
            leaning.leg = dice.chance(50) ? model::Sense::plus : model::Sense::minus;
            frame.leaning.push_back(leaning);
        }
    }
    LeaningShape shape{.shelves = {}};
    shape.width = ruler.draw(dice, inches(10), inches(40));
    shape.depth = ruler.draw(dice, inches(12), inches(26));
    shape.height = ruler.draw(dice, inches(14), inches(60));
    const Nm most = std::min(shape.depth - inches(6), shape.height / 2);
    shape.leans_in = ruler.draw(dice, -most / 3, most);
    shape.shelves = ruler.positions(dice, dice.below(3), 0, shape.height, inches(5));
    shape.stock = project.stock[0].name;
    shape.posts = dice.chance(70) ? shape.stock : dice.one_of(project.stock).name;
    auto frame = leaning_frame("leaning frame", shape);
    frame.quarter_turns = static_cast<int>(dice.below(4));
    frame.origin[0] = formula_of(-inches(300));
    project.frames.push_back(std::move(frame));
}

void add_allowances(Dice& dice, model::Frame& frame, const Ruler& ruler) {
    const std::uint32_t count = dice.below(3);
    for (std::uint32_t i = 0; i < count; ++i) {
        auto& member = frame.members[dice.below(static_cast<std::uint32_t>(frame.members.size()))];
        member.allowance_from = formula_of(ruler.draw(dice, 0, inches(1) / 4));
    }
}

std::vector<model::Formula> formulas_of(const std::vector<Nm>& lengths) {
    std::vector<model::Formula> formulas;
    for (const Nm length : lengths) formulas.push_back(formula_of(length));
    return formulas;
}

// Adds what the program's own starters leave of random sizes; nothing where the edit is refused.
void start_frame(
    Dice& dice, model::Project& project, const std::string& name, const Ruler& ruler, bool step) {
    const std::string stock = project.stock[0].name;
    const Nm width = ruler.draw(dice, inches(12), inches(60));
    const Nm depth = ruler.draw(dice, inches(12), inches(28));
    const Nm height = ruler.draw(dice, inches(14), inches(60));
    const Nm well_height = ruler.draw(dice, inches(4), height / 2);
    const Nm well_depth = ruler.draw(dice, inches(4), depth - inches(6));
    const std::uint32_t shelf_count = dice.below(3);
    const std::uint32_t divider_count = dice.below(3);
    const auto shelves =
        ruler.positions(dice, shelf_count, step ? well_height : 0, height, inches(4));
    const auto dividers = ruler.positions(dice, divider_count, 0, width, inches(5));
    model::Edit edit = model::StartBoxFrame{name,
                                            stock,
                                            formula_of(width),
                                            formula_of(depth),
                                            formula_of(height),
                                            formulas_of(shelves),
                                            formulas_of(dividers)};
    if (step) {
        edit = model::StartSteppedFrame{name,
                                        stock,
                                        formula_of(width),
                                        formula_of(depth),
                                        formula_of(height),
                                        formula_of(well_height),
                                        formula_of(well_depth),
                                        formulas_of(shelves),
                                        formulas_of(dividers)};
    }
    auto started = model::apply(project, edit);
    if (started) project = std::move(started).value();
}

// Some members of the last frame made of something else.
void mix_stock(Dice& dice, model::Project& project) {
    for (auto& member : project.frames.back().members) {
        if (dice.chance(25)) member.stock = dice.one_of(project.stock).name;
    }
}

void add_frame(Dice& dice,
               model::Project& project,
               const std::string& name,
               FrameShape shape,
               const Ruler& ruler) {
    if (shape == FrameShape::started_box || shape == FrameShape::started_step) {
        const std::size_t before = project.frames.size();
        start_frame(dice, project, name, ruler, shape == FrameShape::started_step);
        if (project.frames.size() > before && dice.chance(50)) mix_stock(dice, project);
        return;
    }
    if (shape == FrameShape::tangle) {
        std::vector<std::string> stocks;
        for (const auto& stock : project.stock) stocks.push_back(stock.name);
        project.frames.push_back(random_tangle(dice, name, stocks, ruler));
        return;
    }
    const Roles roles = random_roles(dice, project.stock);
    project.frames.push_back(shape == FrameShape::box ? random_box(dice, name, roles, ruler)
                                                      : random_step(dice, name, roles, ruler));
}

}  // namespace

std::string_view name_of(FrameShape shape) {
    constexpr std::array<std::string_view, 5> names{"box", "step", "started box", "started step",
                                                    "tangle"};
    return names[static_cast<std::size_t>(shape)];
}

RandomProject random_project(std::uint32_t seed, const model::Catalogue& catalogue) {
    Dice dice{seed};
    RandomProject random;
    constexpr std::array<FrameShape, 10> shapes{FrameShape::box,          FrameShape::box,
                                                FrameShape::box,          FrameShape::box,
                                                FrameShape::step,         FrameShape::step,
                                                FrameShape::started_box,  FrameShape::started_box,
                                                FrameShape::started_step, FrameShape::tangle};
    random.shape = dice.one_of(shapes);
    random.is_metric = dice.chance(30);
    random.is_mixed = dice.chance(50);
    model::Project& project = random.project;
    project.name = "random " + std::to_string(seed);
    if (random.is_metric) project.shown.form = engine::TapeForm::millimetre;
    project.shop = random_shop(dice, random.is_metric);
    project.stock = random.is_metric
                        ? random_stock(dice, metric_sizes, true, random.is_mixed, catalogue)
                        : random_stock(dice, inch_sizes, false, random.is_mixed, catalogue);
    if (project.stock.empty()) return random;
    const Ruler ruler = random_ruler(dice, random.is_metric);
    const std::uint32_t frames = dice.chance(20) ? 2 + dice.below(2) : 1;
    for (std::uint32_t i = 0; i < frames; ++i) {
        add_frame(dice, project, "frame " + std::to_string(i + 1), random.shape, ruler);
        if (project.frames.size() <= i) break;  // the starter refused it
        model::Frame& frame = project.frames.back();
        if (dice.chance(30)) add_overrides(dice, frame, random.is_metric);
        if (dice.chance(15)) add_allowances(dice, frame, ruler);
        frame.quarter_turns = static_cast<int>(dice.below(4));
        // Far enough apart that frames never meet, whichever way they are turned.
        frame.origin[0] = formula_of(inches(200) * i + ruler.draw(dice, 0, inches(20)));
        frame.origin[2] = formula_of(ruler.draw(dice, 0, inches(20)));
    }
    // Drawn apart, so that the frames of a seed stay what they are.
    Dice leaning_dice{seed + 0x1EA2U};
    if (leaning_dice.chance(25)) add_leaning(leaning_dice, project, ruler);
    Dice screw_dice{seed + 0x5C4E3U};
    choose_screws(screw_dice, project, random.is_metric);
    Dice recipe_dice{seed + 0x2EC19EU};
    choose_recipes(recipe_dice, project, random.is_metric, catalogue);
    Dice bar_dice{seed + 0xBA25U};
    shorten_bars(bar_dice, project, random.is_metric);
    Dice foot_dice{seed + 0xF007U};
    ask_for_feet(foot_dice, project);
    Dice brace_dice{seed + 0xB4ACE5U};
    if (brace_dice.chance(35)) add_braces(brace_dice, project, random.is_metric, catalogue);
    Dice panel_dice{seed + 0x9A2E1U};
    if (panel_dice.chance(50)) add_random_panels(panel_dice, project, random.is_metric);
    return random;
}

}  // namespace tests
