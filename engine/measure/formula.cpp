#include "engine/measure/formula.h"

#include "engine/measure/formula_reader.h"

namespace engine {

std::string_view name_of(QuantityKind kind) {
    switch (kind) {
        case QuantityKind::length:
            return "length";
        case QuantityKind::angle:
            return "angle";
        case QuantityKind::number:
            return "plain number";
    }
    return "plain number";
}

Result<Quantity> evaluate(std::string_view formula,
                          QuantityKind wanted,
                          LengthUnit bare,
                          const NameLookup& lookup) {
    const NameSource names = [&lookup](std::string_view name) {
        const auto found = lookup ? lookup(name) : std::nullopt;
        return found ? NameValue{NameState::known, *found} : NameValue{};
    };
    return FormulaReader{formula, names}.read(wanted, bare);
}

}  // namespace engine
