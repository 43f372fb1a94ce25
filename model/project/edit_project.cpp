// Edits of the project as a whole: title, shop, dimensions.
#include "engine/files/json_text.h"
#include "model/project/change.h"
#include "model/project/check_thing.h"
#include "model/project/follow_room.h"
#include "model/project/named_list.h"
#include "model/project/references.h"
#include "model/project/walk_texts.h"

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

// Where a formula refers to the dimension, its own formulas apart.
std::vector<std::string> users_of_dimension(const Project& project, const std::string& name) {
    std::vector<std::string> users;
    const std::string own = "dimension " + name;
    walk_texts(project, [&](const Meaning& meaning, const std::string& text, const Trail& trail) {
        if (meaning.role != Role::formula) return;
        const std::vector<std::string> names = engine::names_in(text);
        if (std::find(names.begin(), names.end(), name) == names.end()) return;
        if (const std::string where = where_text(trail); where != own) users.push_back(where);
    });
    users.erase(std::unique(users.begin(), users.end()), users.end());
    return users;
}

void rename_dimension(Project& project, const std::string& before, const std::string& after) {
    walk_texts(project, [&](const Meaning& meaning, std::string& text, const Trail&) {
        if (meaning.role != Role::formula) return;
        // Most formulas are left alone, so look before building a new text.
        if (text.find(before) == text.npos) return;
        text = engine::with_name_replaced(text, before, after);
    });
}

}  // namespace

Changed change(Project& project, const SetTitle& edit) {
    if (!engine::is_utf8(edit.name) || !engine::is_utf8(edit.note)) {
        return Error{ErrorCode::invalid_text, "title", "not readable as UTF-8 text"};
    }
    project.name = edit.name;
    project.note = edit.note;
    return Done{};
}

Changed change(Project& project, const SetShop& edit) {
    if (auto sound = check_thing(edit.shop, "shop"); !sound) return sound;
    const Formula clearance = clearance_followed_by_planes(project, edit.shop.clearance);
    project.shop = edit.shop;
    project.shop.clearance = clearance;
    return Done{};
}

Changed change(Project& project, const PutDimension& edit) {
    const Dimension& dimension = edit.dimension;
    if (!engine::is_name(dimension.name)) {
        return Error{ErrorCode::invalid_value, described(dimension),
                     "a formula could not use this name; begin with a letter, go on with letters, "
                     "digits and single spaces, and use no unit or function"};
    }
    if (auto put = put_named(project.dimensions, dimension, edit.instead_of, ""); !put) return put;
    if (!edit.instead_of.empty() && edit.instead_of != dimension.name) {
        rename_dimension(project, edit.instead_of, dimension.name);
    }
    return Done{};
}

Changed change(Project& project, const SetFormula& edit) {
    const auto found = find_named(project.dimensions, edit.dimension);
    if (found == project.dimensions.end()) return no_such<Dimension>("", edit.dimension);
    if (auto readable = check_formula(edit.formula, found->kind, described(*found)); !readable) {
        return readable;
    }
    found->formula = edit.formula;
    return Done{};
}

Changed change(Project& project, const RemoveDimension& edit) {
    if (const auto users = users_of_dimension(project, edit.dimension); !users.empty()) {
        return Error{ErrorCode::invalid_value, "dimension " + edit.dimension,
                     "a formula needs it, in " + some_of(users) + "; change that first"};
    }
    return remove_named(project.dimensions, edit.dimension, "");
}

}  // namespace model
