#include "model/project/references.h"

namespace model {

namespace {

template <class Things>
bool has_named(const Things& things, const std::string& name) {
    return std::any_of(things.begin(), things.end(),
                       [&](const auto& thing) { return thing.name == name; });
}

}  // namespace

bool has_target(const Project& project, const Frame* frame, const Reference& reference) {
    if (reference.target == Target::stock) return has_named(project.stock, reference.name);
    if (frame == nullptr) return false;
    if (reference.target == Target::plane) return has_named(frame->planes, reference.name);
    if (reference.target == Target::bay) return has_named(frame->bays, reference.name);
    return has_named(frame->members, reference.name) ||
           has_named(frame->diagonals, reference.name) || has_named(frame->leaning, reference.name);
}

std::string_view name_of(Target target) {
    switch (target) {
        case Target::stock:
            return "stock";
        case Target::plane:
            return "plane";
        case Target::bay:
            return "bay";
        case Target::member:
            return "member";
        case Target::none:
            break;
    }
    return "thing";
}

std::string some_of(const std::vector<std::string>& users) {
    if (users.empty()) return "nothing";
    const std::size_t more = users.size() - 1;
    return users.front() + (more > 0 ? " and " + std::to_string(more) + " more" : "");
}

}  // namespace model
