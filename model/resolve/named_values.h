// The values of formulas once all dimensions are known: for what looks at a resolved project again.
#pragma once

#include "model/resolve/resolved.h"

#include <map>
#include <optional>
#include <string_view>

namespace model {

// Says nothing about a formula that cannot be worked out: that has a finding of its own. Of
// `resolved` the dimensions are used; both must outlive it.
class NamedValues {
public:
    NamedValues(const Project& project, const Resolved& resolved);

    // None where it fails or is longer than any length that is worked with.
    std::optional<Nm> length(const Formula& formula) const;
    std::optional<Point> point(const Place& place) const;
    std::optional<double> angle(const Formula& formula) const;  // degrees

private:
    std::optional<engine::Quantity> value(const Formula& formula, engine::QuantityKind kind) const;

    engine::LengthUnit bare_;
    std::map<std::string_view, engine::Quantity> named_;
};

}  // namespace model
