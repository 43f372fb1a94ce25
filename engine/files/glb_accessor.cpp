#include "engine/files/glb_accessor.h"

#include "engine/files/scan_bytes.h"

#include <nlohmann/json.hpp>

#include <string>

namespace engine {
namespace {

using Json = nlohmann::json;

constexpr const char* again = "; the file is damaged, so save the scan again";

class AccessorReader {
public:
    AccessorReader(const Json& root, std::string_view raw, std::size_t index)
        : root_{root}, raw_{raw}, where_{"/accessors/" + std::to_string(index)} {
        if (const auto* accessors = member(root, "accessors"))
            accessor_ = element(*accessors, index);
    }

    Result<GlbElements> positions() {
        if (!is_plain()) return error_;
        if (!is("type", "VEC3") || number("componentType") != std::size_t{5126})
            return fault("positions must be three floats each; save the scan without quantization");
        return elements(GlbComponent::float32, 12);
    }

    Result<GlbElements> indices() {
        if (!is_plain()) return error_;
        const auto component = number("componentType");
        if (is("type", "SCALAR") && component == std::size_t{5121})
            return elements(GlbComponent::uint8, 1);
        if (is("type", "SCALAR") && component == std::size_t{5123})
            return elements(GlbComponent::uint16, 2);
        if (is("type", "SCALAR") && component == std::size_t{5125})
            return elements(GlbComponent::uint32, 4);
        return fault(std::string("indices must be single whole numbers") + again);
    }

private:
    Error fault(std::string message) const {
        return {ErrorCode::bad_file, where_, std::move(message)};
    }
    bool fail(std::string message) {
        error_ = fault(std::move(message));
        return false;
    }

    bool is(const char* key, std::string_view wanted) const {
        const auto* value = member(*accessor_, key);
        return value != nullptr && value->is_string() &&
               value->get_ref<const std::string&>() == wanted;
    }
    std::optional<std::size_t> number(const char* key) const {
        return whole_number(member(*accessor_, key));
    }
    // Nought where it is not stated; no value where it is stated and no whole number.
    static std::optional<std::size_t> offset_in(const Json& object, const char* key) {
        const auto* value = member(object, key);
        return value == nullptr ? std::size_t{0} : whole_number(value);
    }

    bool is_plain() {
        if (accessor_ == nullptr) return fail(std::string("this accessor is not there") + again);
        if (member(*accessor_, "sparse") != nullptr)
            return fail("sparse accessors are not read; save the scan as plain triangles");
        return true;
    }

    // The bytes of a buffer view.
    bool find_view(const Json& view) {
        if (const auto* extensions = member(view, "extensions");
            extensions != nullptr && !extensions->empty())
            return fail("the bytes are compressed; save the scan without compression");
        if (whole_number(member(view, "buffer")) != std::size_t{0} || is_buffer_elsewhere())
            return fail("the bytes lie in another file; save the scan as GLB with all in one file");
        const auto offset = offset_in(view, "byteOffset");
        const auto length = whole_number(member(view, "byteLength"));
        if (!offset || !length || *offset > raw_.size() || *length > raw_.size() - *offset)
            return fail(std::string("its bytes reach out of the file") + again);
        view_ = raw_.substr(*offset, *length);
        return true;
    }
    bool is_buffer_elsewhere() const {
        const auto* buffers = member(root_, "buffers");
        const auto* buffer = buffers != nullptr ? element(*buffers, 0) : nullptr;
        return buffer == nullptr || member(*buffer, "uri") != nullptr;
    }

    Result<GlbElements> elements(GlbComponent component, std::size_t size) {
        const auto* views = member(root_, "bufferViews");
        const auto index = number("bufferView");
        const auto* view = views != nullptr && index ? element(*views, *index) : nullptr;
        if (view == nullptr) return fault(std::string("it has no bytes") + again);
        if (!find_view(*view)) return error_;
        const auto offset = offset_in(*accessor_, "byteOffset");
        const auto count = number("count");
        const auto* stated = member(*view, "byteStride");
        const auto stride = stated == nullptr ? size : whole_number(stated).value_or(0);
        if (!offset || !count || *count == 0 || stride < size || *offset > view_.size() ||
            view_.size() - *offset < size || *count - 1 > (view_.size() - *offset - size) / stride)
            return fault(std::string("its elements reach out of their bytes") + again);
        return GlbElements{component, view_.data() + *offset, stride, *count};
    }

    const Json& root_;
    std::string_view raw_;
    std::string where_;
    const Json* accessor_ = nullptr;
    std::string_view view_;
    Error error_;
};

}  // namespace

std::uint32_t GlbElements::index_at(std::size_t index) const {
    const char* const place = at(index);
    switch (component) {
        case GlbComponent::uint8:
            return value_at<std::uint8_t>(place, ByteOrder::little);
        case GlbComponent::uint16:
            return value_at<std::uint16_t>(place, ByteOrder::little);
        case GlbComponent::uint32:
            return value_at<std::uint32_t>(place, ByteOrder::little);
        case GlbComponent::float32:
            break;
    }
    return 0;
}

Result<GlbElements> positions_at(const Json& root, std::string_view raw, std::size_t accessor) {
    return AccessorReader{root, raw, accessor}.positions();
}

Result<GlbElements> indices_at(const Json& root, std::string_view raw, std::size_t accessor) {
    return AccessorReader{root, raw, accessor}.indices();
}

}  // namespace engine
