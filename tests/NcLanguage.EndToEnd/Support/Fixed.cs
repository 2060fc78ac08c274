namespace NcLanguage.EndToEnd.Support;

/// <summary>Whether an editor's fix has reached the disk.</summary>
static class Fixed
{
    /// <summary>The command line, asked again, no longer tells of the finding, and says it of one place less.</summary>
    public static async Task AssertAsync(DemoJob before, ToldFinding wanted)
    {
        Assert.NotEqual(before.Lines, await File.ReadAllLinesAsync(before.Program));
        var after = await before.CheckAgainAsync();
        Assert.Equal(before.Findings.Count(f => f.Name == wanted.Name) - 1, after.Count(f => f.Name == wanted.Name));
    }
}
