#include "model/resolve/stocks_alike.h"

#include <map>
#include <string_view>
#include <utility>

namespace model {

std::vector<Index> first_stocks_alike(const Project& project) {
    std::map<std::pair<std::string_view, std::string_view>, Index> first;
    std::vector<Index> alike;
    for (Index i = 0; i < project.stock.size(); ++i) {
        const auto& stock = project.stock[i];
        alike.push_back(first.try_emplace({stock.section, stock.alloy}, i).first->second);
    }
    return alike;
}

}  // namespace model
