using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Hovers of codes that a machine has of its own. Names and words are our own.</summary>
public sealed class OwnCodeHoverTests
{
    static readonly MachineProfile Mill = MachineProfile.IsoMill with
    {
        Name = "the mill by the door",
        IsChosen = true,
        Codes = [new('G', 51, "smooths *the* path", [], "Q"), new('M', 130, "spindle and coolant", ["M3", "M8"], "")],
    };

    [Theory]
    [InlineData("S800 M$013", "**M13** spindle and coolant\n\nA code of the mill by the door. It is followed as M3 spindle clockwise and M8 flood coolant on.")]
    [InlineData("G$05.1 Q1", "**G5.1** smooths \\*the\\* path\n\nA code of the mill by the door. What it does beyond that is not followed here.\n\nTakes Q.")]
    [InlineData("G5.1 Q$01", "**Q1** word of G5.1\n\nG5.1 smooths \\*the\\* path.")]
    public void It_says_what_the_machine_file_says(string marked, string expected) => Editor.Shows(expected, marked, machine: Mill);
}
