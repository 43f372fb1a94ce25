// Formulas become lengths: the first step of resolve.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace model {

// No length beyond this is worked with: 1 km. It keeps every later sum far from overflow.
inline constexpr Nm most_length = 1'000'000'000'000;

// The project's named values, and a reader of all other formulas. A formula that cannot be read
// becomes a finding that says where it stands.
class Values {
public:
    Values(const Project& project, Resolved& out);

    // A finding where a formula of that kind cannot be worked out.
    void check(const Formula& formula,
               engine::QuantityKind kind,
               const Subject& where,
               std::string_view what);

    // The value of a length formula; none, and a finding, where it fails or is beyond most_length.
    std::optional<Nm> length(const Formula& formula, const Subject& where, std::string_view what);

private:
    engine::Result<engine::Quantity> evaluated(const Formula& formula,
                                               engine::QuantityKind kind) const;

    Resolved& out_;
    engine::LengthUnit bare_;
    std::unordered_map<std::string_view, engine::Quantity> named_;
};

// Shop settings as lengths; what is missing or senseless falls back to the default, with a finding.
ResolvedShop shop_values(const Project& project, Values& values, std::vector<Finding>& findings);

}  // namespace model
