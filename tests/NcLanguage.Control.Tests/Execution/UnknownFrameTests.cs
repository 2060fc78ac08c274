using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>A setup whose "frame" could not be read: where its obstacles stand is not known under any work offset.</summary>
public class UnknownFrameTests
{
    [Theory]
    [InlineData("G90 X5")]
    [InlineData("G54")]
    [InlineData("G59.3")]
    public void No_work_offset_lies_in_an_unknown_frame(string block)
    {
        var unknown = new Session(setup: new Setup { IsPresent = true, Frame = Setup.UnknownFrame }).Run(block);

        Assert.False(unknown.Step.ToFrame.IsKnown);
    }

    [Fact]
    public void The_frame_of_the_setup_is_in_force_at_the_start() =>
        Assert.True(new Session(setup: new Setup { IsPresent = true, Frame = 55 }).Run("G90").Step.ToFrame.IsKnown);
}
