// Edits of what stands outside the frames: stock, suppliers and the room's obstacles.
#include "model/project/change.h"
#include "model/project/follow_room.h"
#include "model/project/named_list.h"
#include "model/project/obstacle_measures.h"
#include "model/project/project_fields.h"
#include "model/project/references.h"

#include <algorithm>

namespace model {

Changed change(Project& project, const PutStock& edit) {
    if (auto put = put_named(project.stock, edit.stock, edit.instead_of, ""); !put) return put;
    if (!edit.instead_of.empty() && edit.instead_of != edit.stock.name) {
        rename_references(project, {Target::stock, edit.instead_of}, edit.stock.name);
    }
    return engine::Done{};
}

Changed change(Project& project, const RemoveStock& edit) {
    if (const auto users = users_of(project, {Target::stock, edit.stock}); !users.empty()) {
        return engine::Error{engine::ErrorCode::invalid_value, "stock " + edit.stock,
                             some_of(users) + " is made of it; choose another stock there first"};
    }
    return remove_named(project.stock, edit.stock, "");
}

Changed change(Project& project, const KeepBars& edit) {
    const auto stock = find_named(project.stock, edit.stock);
    if (stock == project.stock.end()) return no_such<Stock>("", edit.stock);
    Stock kept = *stock;
    kept.offcuts = edit.offcuts;
    kept.at_home = edit.at_home;
    kept.at_saw = edit.at_saw;
    return put_named(project.stock, kept, kept.name, "");
}

Changed change(Project& project, const PutSupplier& edit) {
    if (auto put = put_named(project.suppliers, edit.supplier, edit.instead_of, ""); !put)
        return put;
    auto& chosen = project.shop.supplier;
    if (!edit.instead_of.empty() && chosen == edit.instead_of) chosen = edit.supplier.name;
    return engine::Done{};
}

Changed change(Project& project, const RemoveSupplier& edit) {
    auto removed = remove_named(project.suppliers, edit.supplier, "");
    if (removed && project.shop.supplier == edit.supplier) project.shop.supplier.clear();
    return removed;
}

Changed change(Project& project, const NotePurchase& edit) {
    const auto where = "purchase " + std::to_string(edit.number);
    if (edit.number < 1 || edit.number > most_count)
        return engine::Error{engine::ErrorCode::out_of_range, where,
                             "purchases are numbered from 1 to 1000000"};
    if (std::ranges::find(project.purchases, edit.number) != project.purchases.end())
        return engine::Error{engine::ErrorCode::invalid_value, where, "it is noted already"};
    project.purchases.push_back(edit.number);
    return engine::Done{};
}

Changed change(Project& project, const TakePurchaseBack& edit) {
    if (std::erase(project.purchases, edit.number) > 0) return engine::Done{};
    return engine::Error{engine::ErrorCode::unknown_name, "purchase " + std::to_string(edit.number),
                         "there is no such purchase"};
}

Changed change(Project& project, const PutObstacle& edit) {
    const auto& old_name = edit.instead_of.empty() ? edit.obstacle.name : edit.instead_of;
    const auto before = find_named(project.room, old_name);
    if (auto sound = check_thing(edit.obstacle, described(edit.obstacle));
        !sound || before == project.room.end()) {
        return put_named(project.room, edit.obstacle, edit.instead_of, "");
    }
    const Obstacle old = *before;
    auto put = put_named(project.room, followed_by_planes(project, old, edit.obstacle),
                         edit.instead_of, "");
    if (!put) return put;
    rename_planes_of_steps(project, old.name, edit.obstacle.name);
    rename_measures(project, old.name, edit.obstacle.name);
    return put;
}

Changed change(Project& project, const RemoveObstacle& edit) {
    return remove_named(project.room, edit.obstacle, "");
}

}  // namespace model
