#include "model/project/journal.h"

#include "engine/files/json_text.h"
#include "model/project/project_json.h"

#include <nlohmann/json.hpp>

#include <utility>

namespace model {
namespace {

using nlohmann::json;

constexpr int journal_format = 1;
constexpr auto format_key = "barwright_journal";

json tree_of(const Project& project) { return json::parse(to_json_text(project)); }

engine::Error not_a_journal(std::string message) {
    return {engine::ErrorCode::bad_file, "record 1", std::move(message)};
}

struct Start {
    std::string file;
    json project;
};

engine::Result<Start> start_in(std::span<const std::string> records) {
    if (records.empty()) return not_a_journal("this journal holds nothing");
    auto tree = engine::read_json(records.front());
    if (!tree) return tree.error();
    const json& first = *tree;
    const auto format = first.is_object() ? first.find(format_key) : first.end();
    if (format == first.end() || !format->is_number_integer())
        return not_a_journal("this is no journal of a project");
    if (*format > journal_format) {
        return engine::Error{engine::ErrorCode::newer_version, "record 1",
                             "it was written by a later version of the program"};
    }
    const auto file = first.find("file");
    const auto project = first.find("project");
    if (file == first.end() || !file->is_string() || project == first.end())
        return not_a_journal("the project that it begins with is missing");
    return Start{file->get<std::string>(), *project};
}

struct Step {
    std::string label;
    json project;
};

// What a record makes of a project; none where that cannot be.
std::optional<Step> step_of(const json& before, const std::string& record) {
    const auto tree = engine::read_json(record);
    if (!tree || !tree->is_object()) return std::nullopt;
    const auto label = tree->find("label");
    if (label == tree->end() || !label->is_string()) return std::nullopt;
    const auto whole = tree->find("project");
    if (whole != tree->end()) return Step{label->get<std::string>(), *whole};
    const auto patch = tree->find("patch");
    if (patch == tree->end()) return std::nullopt;
    try {
        return Step{label->get<std::string>(), before.patch(*patch)};
    } catch (const json::exception&) {  // the library's way to say that it does not fit
        return std::nullopt;
    }
}

}  // namespace

JournalWriter::JournalWriter(const Project& saved, std::string file)
    : last_{std::make_unique<json>(tree_of(saved))} {
    first_ =
        json{{format_key, journal_format}, {"file", std::move(file)}, {"project", *last_}}.dump(
            -1, ' ', false, json::error_handler_t::replace);
}

JournalWriter::~JournalWriter() = default;
JournalWriter::JournalWriter(JournalWriter&&) noexcept = default;
JournalWriter& JournalWriter::operator=(JournalWriter&&) noexcept = default;

std::optional<std::string> JournalWriter::next_record(const Project& next,
                                                      const std::string& label) {
    auto tree = tree_of(next);
    auto patch = json::diff(*last_, tree);
    if (patch.empty()) return std::nullopt;
    *last_ = std::move(tree);
    const auto text = [&](const char* key, json what) {
        return json{{"label", label}, {key, std::move(what)}}.dump(-1, ' ', false,
                                                                   json::error_handler_t::replace);
    };
    auto as_patch = text("patch", std::move(patch));
    auto as_whole = text("project", *last_);
    return as_patch.size() <= as_whole.size() ? std::move(as_patch) : std::move(as_whole);
}

engine::Result<ReplayedJournal> replayed(std::span<const std::string> records) {
    auto start = start_in(records);
    if (!start) return start.error();
    json tree = start->project;
    auto saved = read_project_json(tree.dump());
    if (!saved) return saved.error();
    ReplayedJournal journal{.file = start->file, .saved = *saved, .now = *saved};
    for (std::size_t i = 1; i < records.size(); ++i) {
        auto step = step_of(tree, records[i]);
        auto project = step ? read_project_json(step->project.dump())
                            : engine::Result<Project>(not_a_journal({}));
        if (!project) {
            journal.left_out = records.size() - i;
            break;
        }
        tree = std::move(step->project);
        journal.now = std::move(project).value();
        journal.last_label = std::move(step->label);
        ++journal.steps;
    }
    return journal;
}

}  // namespace model
