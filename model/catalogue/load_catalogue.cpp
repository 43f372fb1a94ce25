#include "model/catalogue/catalogue.h"
#include "model/catalogue/read_tables.h"
#include "model/catalogue/table.h"

#include <map>

namespace model {
namespace {

// A second row of one name would never be found.
std::optional<engine::Error> repeated_name(const Table& table, std::string_view column) {
    std::map<std::string, std::size_t> seen;
    for (std::size_t i = 0; i < table.csv.rows.size(); ++i) {
        Row row{table, i};
        const auto name = row.text(column);
        if (row.error()) return row.error();
        const auto [first, is_new] = seen.emplace(name, table.lines[i]);
        if (is_new) continue;
        row.fail(column, "'" + name + "' stands in line " + std::to_string(first->second) + " too");
        return row.error();
    }
    return std::nullopt;
}

// Table after table; the first error ends it.
class Loading {
public:
    explicit Loading(const std::filesystem::path& assets) : assets_{assets} {}

    Table table(std::string_view name, std::string_view name_column) {
        if (error_) return {};
        auto read = read_table(assets_, name);
        if (!read) {
            error_ = read.error();
            return {};
        }
        if (!name_column.empty()) error_ = repeated_name(*read, name_column);
        return std::move(read).value();
    }

    template <class T>
    void keep(std::vector<T>& into, engine::Result<std::vector<T>> read) {
        if (error_) return;
        if (read)
            into = std::move(read).value();
        else
            error_ = read.error();
    }

    const std::optional<engine::Error>& error() const { return error_; }

private:
    const std::filesystem::path& assets_;
    std::optional<engine::Error> error_;
};

}  // namespace

engine::Result<Catalogue> load_catalogue(const std::filesystem::path& assets) {
    Loading loading{assets};
    Catalogue catalogue;
    loading.keep(catalogue.sections, read_sections(loading.table("sections", "id")));
    loading.keep(catalogue.alloys, read_alloys(loading.table("alloys", "id")));
    loading.keep(catalogue.sheet_materials,
                 read_sheet_materials(loading.table("sheet_materials", "id")));
    loading.keep(catalogue.drills, read_drills(loading.table("drills", "name")));
    const auto& drills = catalogue.drills;
    const auto rivets = loading.table("blind_rivets", "id");
    loading.keep(catalogue.rivets,
                 read_rivets(rivets, loading.table("blind_rivet_grips", ""), drills));
    loading.keep(catalogue.screws, read_screws(loading.table("machine_screws", "id"), drills));
    loading.keep(catalogue.rivet_nuts,
                 read_rivet_nuts(loading.table("rivet_nuts", "id"), catalogue.screws, drills));
    loading.keep(catalogue.pins, read_pins(loading.table("sheet_pins", "id"), drills));
    loading.keep(catalogue.layout_rules, read_layout_rules(loading.table("layout_rules", "id")));
    loading.keep(catalogue.drilling_speeds,
                 read_drilling_speeds(loading.table("drilling_speeds", "material")));
    loading.keep(catalogue.vent_covers, read_vent_covers(loading.table("vent_covers", "id")));
    if (loading.error()) return *loading.error();
    return catalogue;
}

}  // namespace model
