#include "engine/drawing/svg.h"

#include "engine/drawing/document_fault.h"
#include "engine/drawing/printable_text.h"
#include "engine/drawing/svg_writing.h"

#include <array>
#include <cstdio>

namespace engine {
namespace {

std::string attribute(std::string_view name, std::string_view value) {
    return ' ' + std::string(name) + "=\"" + std::string(value) + '"';
}

std::string attribute(std::string_view name, double value) {
    return attribute(name, svg_number(value));
}

std::string svg_colour(Ink ink) {
    const InkParts parts = parts_of(ink);
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%02x%02x%02x", parts.red, parts.green, parts.blue);
    return text.data();
}

std::string svg_pair(PagePoint p) { return svg_number(p.x) + ' ' + svg_number(p.y); }

std::string pen_attributes(const Pen& pen) {
    std::string text =
        attribute("stroke", svg_colour(pen.ink)) + attribute("stroke-width", pen.width);
    std::string dashes;
    for (const double length : dash_lengths(pen))
        dashes += (dashes.empty() ? "" : " ") + svg_number(length);
    if (!dashes.empty()) text += attribute("stroke-dasharray", dashes);
    return text;
}

std::string paint_attributes(const Paint& paint) {
    return attribute("fill", paint.fill ? svg_colour(*paint.fill) : "none") +
           (paint.pen ? pen_attributes(*paint.pen) : "");
}

std::string_view anchor_word(TextAnchor anchor) {
    switch (anchor) {
        case TextAnchor::start:
            break;
        case TextAnchor::middle:
            return "middle";
        case TextAnchor::end:
            return "end";
    }
    return "start";
}

class SvgWriter {
public:
    void operator()(const DrawnPath& path) {
        std::string way;
        for (const PagePoint& p : path.points) way += (way.empty() ? "M" : " L") + svg_pair(p);
        if (path.is_closed) way += " Z";
        put("<path" + attribute("d", way) + paint_attributes(path.paint) + "/>");
    }

    void operator()(const DrawnArc& arc) {
        if (arc.sweep_deg >= 360.0) {
            put("<circle" + attribute("cx", arc.centre.x) + attribute("cy", arc.centre.y) +
                attribute("r", arc.radius) + paint_attributes(arc.paint) + "/>");
            return;
        }
        const std::string radius = svg_number(arc.radius);
        const std::string way = "M" + svg_pair(point_on_arc(arc, arc.from_deg)) + " A" + radius +
                                ' ' + radius + " 0 " + (arc.sweep_deg > 180.0 ? "1" : "0") + " 0 " +
                                svg_pair(point_on_arc(arc, arc.from_deg + arc.sweep_deg));
        put("<path" + attribute("d", way) + paint_attributes(arc.paint) + "/>");
    }

    void operator()(const DrawnLines& lines) {
        std::string way;
        for (const auto& [from, to] : lines.lines)
            way += (way.empty() ? "M" : " M") + svg_pair(from) + " L" + svg_pair(to);
        put("<path" + attribute("d", way) + attribute("fill", "none") + pen_attributes(lines.pen) +
            "/>");
    }

    void operator()(const DrawnText& text) {
        const Lettering& look = text.lettering;
        std::string element =
            "<text" + attribute("x", text.at.x) + attribute("y", text.at.y) +
            attribute("font-size", look.size) +
            attribute("textLength", text_width(text.text, look.size, look.weight)) +
            attribute("lengthAdjust", "spacingAndGlyphs");
        if (look.weight == LetterWeight::bold) element += attribute("font-weight", "500");
        if (look.anchor != TextAnchor::start)
            element += attribute("text-anchor", anchor_word(look.anchor));
        if (look.turned_deg != 0.0) {
            element += attribute("transform", "rotate(" + svg_number(-look.turned_deg) + ' ' +
                                                  svg_pair(text.at) + ')');
        }
        if (look.ink != Ink::black) element += attribute("fill", svg_colour(look.ink));
        put(element + '>' + xml_text(text.text) + "</text>");
    }

    void operator()(const ClipBegin& clip) {
        const std::string name = "box" + std::to_string(++clips_);
        put("<clipPath" + attribute("id", name) + "><rect" + attribute("x", clip.box.left) +
            attribute("y", clip.box.top) + attribute("width", clip.box.width) +
            attribute("height", clip.box.height) + "/></clipPath>");
        put("<g" + attribute("clip-path", "url(#" + name + ")") + '>');
    }

    void operator()(const ClipEnd&) { put("</g>"); }

    void put(const std::string& line) { text_ += line + '\n'; }

    std::string text() && { return std::move(text_); }

private:
    std::string text_;
    int clips_ = 0;
};

std::string opening(PaperSize size) {
    const std::string width = svg_number(size.width);
    const std::string height = svg_number(size.height);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"" +
           attribute("width", width + "mm") + attribute("height", height + "mm") +
           attribute("viewBox", "0 0 " + width + ' ' + height) +
           attribute("font-family", "Roboto, 'DejaVu Sans', sans-serif") +
           attribute("font-kerning", "none") + attribute("fill-rule", "evenodd") +
           attribute("xml:space", "preserve") + '>';
}

}  // namespace

Result<std::string> svg_text(const Page& page, std::string_view title) {
    if (auto error = page_fault(page)) return *std::move(error);
    SvgWriter writer;
    writer.put("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    writer.put(opening(page.size()));
    if (!title.empty()) writer.put("<title>" + xml_text(printable_text(title)) + "</title>");
    writer.put("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>");
    for (const PageItem& item : page.items()) std::visit(writer, item);
    writer.put("</svg>");
    return std::move(writer).text();
}

}  // namespace engine
