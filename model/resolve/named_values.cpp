#include "model/resolve/named_values.h"

#include "model/resolve/values.h"

#include <cstddef>
#include <cstdlib>

namespace model {

NamedValues::NamedValues(const Project& project, const Resolved& resolved)
    : bare_{engine::bare_unit(project.shown)} {
    for (std::size_t i = 0; i < resolved.dimensions.size() && i < project.dimensions.size(); ++i) {
        if (const auto& value = resolved.dimensions[i]) {
            named_.emplace(project.dimensions[i].name, *value);
        }
    }
}

std::optional<engine::Quantity> NamedValues::value(const Formula& formula,
                                                   engine::QuantityKind kind) const {
    const auto lookup = [this](std::string_view name) -> std::optional<engine::Quantity> {
        const auto found = named_.find(name);
        if (found == named_.end()) return std::nullopt;
        return found->second;
    };
    const auto found = engine::evaluate(formula, kind, bare_, lookup);
    if (!found) return std::nullopt;
    return *found;
}

std::optional<Nm> NamedValues::length(const Formula& formula) const {
    const auto found = value(formula, engine::QuantityKind::length);
    if (!found || std::abs(found->length.nm()) > most_length) return std::nullopt;
    return found->length.nm();
}

std::optional<Point> NamedValues::point(const Place& place) const {
    Point at{};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto found = length(place[i]);
        if (!found) return std::nullopt;
        at[i] = *found;
    }
    return at;
}

std::optional<double> NamedValues::angle(const Formula& formula) const {
    const auto found = value(formula, engine::QuantityKind::angle);
    if (!found) return std::nullopt;
    return found->value;
}

}  // namespace model
