#include "editor/dialogs/supplier_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

std::optional<Change> tried_change(SupplierForm& form, const Derived& derived) {
    form.trouble = reason_against_name(derived.project->suppliers, form.supplier.name,
                                       form.instead_of, "a supplier");
    if (!form.trouble.empty()) return std::nullopt;
    const model::Edit edit = model::PutSupplier{form.supplier, form.instead_of};
    form.trouble = reason_against_edit(derived, edit);
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
}

void draw_way(model::Supplier& supplier) {
    const auto draw_one = [&](const char* name, model::WayHome way) {
        if (draw_radio(name, supplier.way == way)) supplier.way = way;
    };
    ImGui::AlignTextToFramePadding();
    draw_text("bars are", colour::quiet);
    ImGui::SameLine(scaled(104));
    draw_one("delivered", model::WayHome::delivered);
    ImGui::SameLine();
    draw_one("fetched", model::WayHome::fetched);
    draw_hint(
        "Then no bar is longer than the list says can be brought home, unless the supplier "
        "cuts it in half");
}

void draw_supplier_lines(SupplierForm& form) {
    draw_form_line("name", form.supplier.name, "metal yard", form.is_fresh);
    draw_form_line("price list", form.supplier.prices, "a .csv file beside the project");
    draw_way(form.supplier);
    draw_form_line("note", form.supplier.note, "days, telephone");
    draw_wrapped(
        "The list is a table that you keep in any spreadsheet: what, size, price, per, limit, "
        "note. It is read again whenever you come back to this window.",
        Type::small, colour::quiet);
}

// Whether the list is there, or is to be begun.
void draw_list_state(SupplierForm& form) {
    if (!form.can_begin) {
        draw_wrapped(form.words, Type::small, colour::quiet);
        log_item("list", form.words);
        return;
    }
    draw_check("begin the list", form.begins_list, "begin this list");
    draw_wrapped(
        "There is no such file yet. It is written with the supplier, with all that the "
        "project needs, for you to fill in the prices.",
        Type::small, colour::quiet);
}

}  // namespace

SupplierForm new_supplier_form(const model::Project& project) {
    SupplierForm form;
    for (int n = 1;; ++n) {
        form.supplier.name = "supplier " + std::to_string(n);
        if (by_name(project.suppliers, form.supplier.name) == nullptr) break;
    }
    for (int n = 1;; ++n) {
        form.supplier.prices = "prices " + std::to_string(n) + ".csv";
        const auto has_it = [&](const model::Supplier& it) {
            return it.prices == form.supplier.prices;
        };
        if (std::ranges::none_of(project.suppliers, has_it)) break;
    }
    return form;
}

FormOutcome draw_supplier_form(SupplierForm& form, const Derived& derived) {
    FormOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const DialogScope dialog("Supplier", is_new ? "New supplier" : "Supplier", scaled(560));
    if (!dialog) return outcome;
    draw_supplier_lines(form);
    draw_list_state(form);
    const auto answer = draw_form_answers(
        form.trouble, {.verb = is_new ? "Add" : "Change",
                       .can_put = !form.supplier.name.empty() && !form.supplier.prices.empty(),
                       .removes = is_new ? "" : "Remove this supplier"});
    if (answer.puts) outcome.change = tried_change(form, derived);
    if (answer.removes) outcome.change = change_of(model::RemoveSupplier{form.instead_of});
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
