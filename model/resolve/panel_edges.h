// How far an overlay panel reaches over the members about its face, and how deep an inset one lies.
#pragma once

#include "model/resolve/panel_face.h"

#include <optional>
#include <span>

namespace model {

// A panel that lies on the same plane, with the gap that it wants between the two.
struct OverlayBeside {
    PanelFace face;
    Nm gap = 0;
};

// Over the members to their far edges, or half-way where another panel adjoins.
Region overlay_region(const Frame& frame,
                      std::span<const Piece> pieces,
                      const PanelFace& face,
                      Nm gap,
                      std::span<const OverlayBeside> others);

struct InsetDepth {
    Nm to = 0;  // beyond the plane: the side of the sheet that looks out; never above zero
    bool rests_inside = false;
    bool has_rest = false;  // something stands behind it
};

// Flush with the plane where legs stand right behind it; else on the legs that stand behind it a
// little deeper or, from inside, against the legs on the face, whichever has more to rest on.
InsetDepth inset_depth(std::span<const Piece> pieces, const PanelFace& face, Nm thickness);

}  // namespace model
