// The sizes of a starter form: formulas that may name one another and the project's dimensions.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/starter_form.h"
#include "engine/measure/formula.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace editor {

class StarterSizes {
public:
    StarterSizes(const StarterForm& form, const Derived& derived);

    // Names as in the form: "width", "well depth", "shelf 2".
    std::optional<engine::Length> length(const std::string& name) const;

    // Why no frame can be made with that size, in words; none when it will do.
    std::optional<std::string> trouble(const std::string& name) const;

    // In the middle of the widest gap between shelves, or dividers, on a whole inch or centimetre
    // where there is room; empty when the ends are not known.
    std::string shelf_between() const;
    std::string divider_between() const;

private:
    std::string between(std::optional<engine::Length> first,
                        std::optional<engine::Length> last,
                        std::string_view kind,
                        std::size_t count) const;
    std::optional<std::string> trouble_inside(const std::string& name,
                                              std::string_view kind,
                                              std::size_t count,
                                              const std::string& first,
                                              const std::string& last) const;
    std::string shown(engine::Length length) const;

    const StarterForm& form_;
    const Derived& derived_;
    std::map<std::string, engine::Result<engine::Quantity>> values_;
    std::map<std::string, std::string> texts_;
};

// The form with formulas that still hold once the frame is made: where one names another field, it
// names the dimension that the field becomes. `trial` has the stock that the frame is made of.
StarterForm with_dimension_names(const StarterForm& form,
                                 const model::Project& trial,
                                 const std::string& stock);

// The edit that a form asks for.
model::Edit starter_edit(const StarterForm& form, const std::string& stock);

}  // namespace editor
