#pragma once

#include "core/acts/kinds/values.h"
#include "core/indicators/indicator.h"

#include <string>
#include <vector>

// Chemical and biological indicators and controls (ACTS.md, 4).

namespace loadwarden {

struct PcdPlaced {
    std::string mark; ///< what is written on it
    std::vector<PlacedIndicator> indicators;
    std::vector<PlacedIndicator> vials;
};

struct SheetPlaced {
    std::string product;
    std::string lot;
};

struct ChemicalRead {
    Seen seen = Seen::unclear;
};

struct ChemicalReread {
    Seen seen = Seen::unclear;
};

struct ChemicalLost {};

struct ChemicalUnsettled {
    std::string why;
};

struct ControlPrepared {
    std::string product;
    std::string lot;
    std::string forLoad; ///< ld-; empty: for none in particular
};

// Of a vial or of a control; the subject says which.

struct BiologicalActivated {};

struct BiologicalIncubated {};

struct ProcessIndicatorRead {
    ProcessIndicator seen = ProcessIndicator::unchanged;
};

struct BiologicalRead {
    Seen seen = Seen::unclear;
};

struct BiologicalReread {
    Seen seen = Seen::unclear;
};

struct BiologicalLost {};

struct BiologicalUnsettled {
    std::string why;
};

struct BiologicalVoided {
    std::string why;
};

} // namespace loadwarden
