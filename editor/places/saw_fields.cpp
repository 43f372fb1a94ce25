#include "editor/places/saw_fields.h"

#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/kit/term.h"
#include "editor/kit/widgets.h"
#include "engine/measure/formula.h"

#include <array>
#include <span>
#include <string_view>

namespace editor {
namespace {

constexpr const char* kerf_name = "saw kerf";
constexpr const char* trim_name = "off each end";
constexpr const char* spares_name = "spare fasteners";
constexpr const char* clearance_name = "clearance";
constexpr const char* gap_name = "frame gap";
constexpr double most_spare_percent = 1000.0;

struct SawField {
    const char* name;
    const char* hint;
};

constexpr std::array<SawField, 3> fields{
    {{kerf_name, "What the blade takes away at each cut: measure a cut of your own saw"},
     {trim_name, "Squared off each mill end before the first piece is measured"},
     {spares_name, "Fasteners bought beyond what is needed, percent"}}};

constexpr std::array<SawField, 2> room_fields{
    {{clearance_name,
      "What every piece keeps from walls, wheel wells and all that is in the room, unless an "
      "obstacle says otherwise"},
     {gap_name, "What frames keep from one another; 0: they may touch"}}};

model::Formula* length_in(model::Shop& shop, std::string_view field) {
    if (field == kerf_name) return &shop.kerf;
    if (field == trim_name) return &shop.end_trim;
    if (field == clearance_name) return &shop.clearance;
    return field == gap_name ? &shop.frame_gap : nullptr;
}

std::string present_text(model::Shop shop, std::string_view field) {
    if (const auto* length = length_in(shop, field)) return *length;
    return quantity_text({engine::QuantityKind::number, {}, shop.spare_percent}, {});
}

engine::Error refusal(std::string message) {
    return {engine::ErrorCode::invalid_value, {}, std::move(message)};
}

engine::Result<model::Shop> with_spares(model::Shop shop, const std::string& text) {
    const auto none = [](std::string_view) { return std::optional<engine::Quantity>(); };
    const auto value =
        engine::evaluate(text, engine::QuantityKind::number, engine::LengthUnit::inch, none);
    if (!value) return value.error();
    if (value->value < 0.0 || value->value > most_spare_percent) {
        return refusal("spares lie between 0 and 1000 percent");
    }
    shop.spare_percent = value->value;
    return shop;
}

engine::Result<model::Shop> with_length(const Derived& derived,
                                        const std::string& field,
                                        const std::string& text) {
    const auto value = tried_length(derived, text);
    if (!value) return value.error();
    if (value->length < engine::Length{}) return refusal("this cannot be less than nothing");
    model::Shop shop = derived.project->shop;
    if (auto* length = length_in(shop, field)) *length = text;
    return shop;
}

std::optional<Change> draw_one(const Derived& derived, const SawField& it, SawTyping& typing) {
    const std::string present = present_text(derived.project->shop, it.name);
    const bool is_typed = typing.field == it.name;
    std::string text = is_typed ? typing.text : present;
    ImGui::AlignTextToFramePadding();
    draw_text(it.name, colour::quiet);
    draw_hint(it.hint);
    explain_term(it.name);
    ImGui::SameLine(scaled(140));
    const auto field = draw_field(it.name, text, {.width = scaled(110)});
    const bool is_number = it.name == std::string_view(spares_name);
    const auto unit = is_number ? std::string("percent") : comes_to(derived, present);
    if (!unit.empty()) {
        ImGui::SameLine();
        draw_text(unit, colour::quiet);
    }
    std::optional<Change> change;
    if (field.active || field.changed || field.left) {
        if (!is_typed || typing.text != text) typing = {.field = it.name, .text = text};
        if (field.entered || field.left) change = take_typed_saw(typing, derived);
    }
    if (typing.field == it.name) typing.is_drawn = true;
    if (typing.field == it.name && !typing.trouble.empty()) {
        draw_wrapped(typing.trouble, Type::small, colour::red);
    }
    return change;
}

std::optional<Change> draw_all(const Derived& derived,
                               std::span<const SawField> all,
                               SawTyping& typing) {
    std::optional<Change> change;
    for (const auto& field : all) {
        auto one = draw_one(derived, field, typing);
        if (one) change = std::move(one);
    }
    return change;
}

}  // namespace

std::optional<Change> take_typed_saw(SawTyping& typing, const Derived& derived) {
    if (typing.field.empty()) return std::nullopt;
    auto tried = saw_change(derived, typing.field, typing.text);
    if (!tried) {
        typing.trouble = error_words(tried.error(), typing.text);
        return std::nullopt;
    }
    typing = {};
    if (tried->edits.empty()) return std::nullopt;
    return std::move(tried).value();
}

engine::Result<Change> saw_change(const Derived& derived,
                                  const std::string& field,
                                  const std::string& text) {
    if (text == present_text(derived.project->shop, field)) return Change{};
    const auto shop = field == spares_name ? with_spares(derived.project->shop, text)
                                           : with_length(derived, field, text);
    if (!shop) return shop.error();
    return Change{.edits = {model::SetShop{*shop}}, .label = "Change " + field + " to " + text};
}

std::optional<Change> draw_saw_fields(const Derived& derived, SawTyping& typing) {
    draw_text("Saw and spares", Type::strong);
    return draw_all(derived, fields, typing);
}

std::optional<Change> draw_room_fields(const Derived& derived, SawTyping& typing) {
    draw_text("Kept apart", Type::strong);
    return draw_all(derived, room_fields, typing);
}

}  // namespace editor
