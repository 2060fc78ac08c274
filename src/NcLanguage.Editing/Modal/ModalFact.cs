using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>One part of the state in force.</summary>
/// <param name="Name">Its name in answers, such as <c>returnLevel</c>.</param>
/// <param name="Slot">The part of the state.</param>
/// <param name="Text">In a setter's words, such as "G99 back to Z2"; for what is not known, its name.</param>
/// <param name="IsKnown">False where it is not known here.</param>
/// <param name="SetLine">The line (0-based) whose block set it; −1 where the program did not.</param>
/// <param name="Code">The code in force, such as G99; empty where it is a value.</param>
/// <param name="Value">Its value: lengths mm, feeds mm/min (per turn mm; inverse time 1/min), seconds, 1/min, or a number as such; NaN where it has none or it is not known.</param>
readonly record struct ModalFact(string Name, Slot Slot, string Text, bool IsKnown, int SetLine, string Code, double Value);
