#include "engine/geometry/convex.h"

#include "engine/geometry/convex_overlap.h"

namespace engine {

double depth_of_overlap(const Prism& a, const Prism& b) {
    return overlap(convex_body(a), convex_body(b)).depth;
}

}  // namespace engine
