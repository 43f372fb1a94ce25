// What was drawn where, by name: tests and scripts find widgets by "Panel/label" instead of by
// pixels. Nothing is noted unless someone listens.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace editor {

struct ItemRecord {
    float left = 0.0F;
    float top = 0.0F;
    float right = 0.0F;
    float bottom = 0.0F;
    bool visible = false;
    bool enabled = true;
    std::string value;  // what it shows: a text field's text, a choice

    float middle_x() const { return (left + right) / 2; }
    float middle_y() const { return (top + bottom) / 2; }

    bool operator==(const ItemRecord&) const = default;
};

using ItemMap = std::map<std::string, ItemRecord, std::less<>>;

// Collects the items of each frame while it lives; like ImGui's context, one at a time.
class ItemLog {
public:
    ItemLog();
    ~ItemLog();
    ItemLog(const ItemLog&) = delete;
    ItemLog& operator=(const ItemLog&) = delete;

    void begin_frame() { items_.clear(); }
    const ItemMap& items() const { return items_; }

private:
    friend class ItemScope;
    friend void log_item(std::string_view name, std::string_view value);
    friend void log_rectangle(std::string_view name, const ItemRecord& record);

    std::string path_;
    ItemMap items_;
};

// Names drawn while it lives stand under "name/".
class ItemScope {
public:
    explicit ItemScope(std::string_view name);
    ~ItemScope();
    ItemScope(const ItemScope&) = delete;
    ItemScope& operator=(const ItemScope&) = delete;

private:
    std::size_t length_before_ = 0;
};

// Notes the last ImGui item.
void log_item(std::string_view name, std::string_view value = {});

// Notes something that is no ImGui item: a tag in the view, a hole on the unrolled piece.
void log_rectangle(std::string_view name, const ItemRecord& record);

}  // namespace editor
