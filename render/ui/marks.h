// What is drawn over the picture: tapes, bud ticks, twin lines, labels, as plain data at places of the window. Whoever
// knows the camera projects; this draws. Every mark has a second sign beside its colour and a dark and a light edge.
// Must not know: the vine, the camera, OpenGL.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/ui/tape.h"

namespace spurwright::ui {

struct At {
    float x = 0, y = 0; // pixels of the window
};

struct HungTape {
    At at;
    Tape tape;
    float length = 36;    // 20 to 60: the points lost, or 36
    std::string word;     // beside it; may be empty
    bool current = false; // the piece spoken of: larger, ringed
};
struct BudTick {
    At at, way;     // way: unit, to the bud's side
    int number = 0; // of the count bud from the head; every fifth is longer and bears it
};
struct TwinLine {
    std::vector<At> points;
    std::string word; // "better", at its end
};
struct GoingLine { // wood that would fall, along its middle
    std::vector<At> points;
};
struct BentCane { // a cane in the hand, crown first
    std::vector<At> points;
    std::vector<float> widths; // pixels, one a point
    At worst;                  // where its skin is strained most
    int level = 0;             // 0 easy to 3 breaks: as many strokes across it there
};
struct CutBar {
    At at, along;      // along: unit, the way the wood grows
    float half = 10;   // of its length
    bool made = false; // a disc with a notch; else the cut meant
};
struct Label {
    At at; // what it speaks of; it stands beside
    std::string first, second;
    bool quiet = false; // names, not answers
};
// A tape with its digit, hung on the wood; its pattern and colour say the same again.
struct DigitTag {
    At at;
    int digit = 1;
    bool right = false;   // after the reveal: framed, with a tick
    bool wrong = false;   // after the reveal: pale
    std::string votes{};  // beside it after the reveal
};
struct TieArrow {
    At at, way;
};

struct Marks {
    std::vector<HungTape> tapes;
    std::vector<BudTick> ticks;
    std::vector<TwinLine> twins;
    std::vector<BentCane> bent;
    std::vector<CutBar> cuts;
    std::vector<GoingLine> going;
    std::vector<TieArrow> arrows;
    std::vector<DigitTag> digits;
    std::vector<At> rings; // a place spoken of, whatever it is
    std::vector<Label> labels; // those that matter most first: later ones give way
};

// Behind all panels, before any of them is begun. Labels keep clear of each other, of `panels` and of the window's
// edge; what lies behind a panel gets none, nor what finds no room, but for the first.
void draw_marks(Ui& ui, const Marks& marks, const std::vector<Box>& panels);

} // namespace spurwright::ui
