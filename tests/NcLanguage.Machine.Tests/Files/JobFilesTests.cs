using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using static NcLanguage.Machine.Tests.Files.MemoryFiles;

namespace NcLanguage.Machine.Tests.Files;

public class JobFilesTests
{
    [Fact]
    public void Without_any_file_there_is_no_setup_and_nobody_chose_the_machine()
    {
        var job = new MemoryFiles().Resolve();

        Assert.Same(Setup.None, job.Setup);
        Assert.Same(MachineProfile.IsoMill, job.Machine);
        Assert.Empty(job.Problems);
        Assert.Equal(
            new[]
            {
                "jobs/plate/part.setup.json", "jobs/plate/nc.setup.json", "jobs/nc.setup.json", "nc.setup.json",
                "jobs/plate/nc.machine.json", "jobs/nc.machine.json", "nc.machine.json",
                "jobs/plate/nc.cutting.json", "jobs/nc.cutting.json", "nc.cutting.json",
            }.Select(At),
            job.LookedAt);
    }

    [Theory]
    [InlineData("jobs/plate/part.setup.json", "jobs/plate/nc.setup.json", "jobs/nc.setup.json", "nc.setup.json")]
    [InlineData("jobs/plate/nc.setup.json", "jobs/nc.setup.json", "nc.setup.json")]
    [InlineData("jobs/nc.setup.json", "nc.setup.json")]
    [InlineData("nc.setup.json")]
    public void The_nearest_setup_counts(params string[] present)
    {
        var files = new MemoryFiles();
        foreach (var path in present)
            files.With(path, $$"""{ "material": "{{path}}" }""");

        Assert.Equal((present[0], At(present[0])), (files.Resolve().Setup.Material, files.Resolve().Setup.Path));
    }

    [Fact]
    public void The_nearest_cutting_data_come_before_those_in_the_executable()
    {
        const string far = """{ "rows": [ { "material": ["brass"], "kind": ["drill"], "speed": [1, 2], "source": "far" } ] }""";
        const string near = """{ "rows": [ { "material": ["brass"], "kind": ["drill"], "speed": [70, 80], "source": "near" } ] }""";
        var files = new MemoryFiles().With("nc.cutting.json", far).With("jobs/nc.cutting.json", near);

        Assert.Equal("near", files.Resolve().Setup.Cutting.Speed("brass", "HSS", ToolKind.Drill, 5)?.Source);
        Assert.False(files.Resolve().Setup.IsPresent);
        Assert.Null(new MemoryFiles().Resolve().Setup.OwnCutting);
        var broken = new MemoryFiles().With("nc.cutting.json", "{").Resolve();
        Assert.Equal(At("nc.cutting.json"), Assert.Single(broken.Problems).Path);
        Assert.NotNull(broken.Setup.Cutting.Speed("brass", "HSS", ToolKind.Drill, 5));
        Assert.Single(new MemoryFiles().With("nc.cutting.json", FileState.Denied).Resolve().Problems);
    }

    [Fact]
    public void The_search_stops_at_the_workspace_root_and_without_one_goes_on_to_the_file_systems_root()
    {
        var files = new MemoryFiles().With("nc.setup.json", """{ "material": "brass" }""").With("../nc.machine.json", """{ "name": "far" }""");

        Assert.False(files.Resolve(root: "jobs").Setup.IsPresent);
        Assert.False(files.Resolve(root: "jobs/").Machine.IsChosen);
        Assert.Equal(("brass", "far"), (files.Resolve(root: null).Setup.Material, files.Resolve(root: null).Machine.Name));
        Assert.Equal("brass", files.Resolve(root: "elsewhere").Setup.Material);
    }

    [Theory]
    [InlineData("part.v2.tap", "part.v2.setup.json")]
    [InlineData("O1000", "O1000.setup.json")]
    public void The_setups_name_is_the_programs_with_its_extension_replaced(string program, string setup) =>
        Assert.Equal(At(setup), SetupLocator.SetupCandidates(At(program), At("."))[0]);

    [Fact]
    public void A_text_never_saved_has_the_setup_and_machine_of_the_workspace()
    {
        var files = new MemoryFiles().With("nc.setup.json", """{ "material": "brass" }""").With("nc.machine.json", """{ "name": "m" }""");

        var job = JobFiles.Resolve(null, At("."), files, JobOptions.None);

        Assert.Equal(("brass", "m"), (job.Setup.Material, job.Machine.Name));
        Assert.Empty(JobFiles.Resolve(null, null, files, JobOptions.None).LookedAt);
    }

    [Fact]
    public void The_setups_machine_comes_before_the_nearest_machine_file_and_is_found_from_the_setups_folder()
    {
        var files = new MemoryFiles()
            .With("nc.setup.json", """{ "machine": "machines/a.machine.json" }""")
            .With("machines/a.machine.json", """{ "name": "a", "base": "../base.machine.json" }""")
            .With("base.machine.json", """{ "base": "training-mill", "maxFeed": 5000 }""")
            .With("jobs/plate/nc.machine.json", """{ "name": "near" }""");

        var job = files.Resolve();

        Assert.Empty(job.Problems);
        Assert.Equal(("a", true, 5000), (job.Machine.Name, job.Machine.IsChosen, job.Machine.MaxFeed!.Value));
        Assert.Equal(HolePositionReading.Incremental, job.Machine.Readings.HolePositions);
        Assert.Contains(At("base.machine.json"), job.LookedAt);
        Assert.DoesNotContain(At("jobs/plate/nc.machine.json"), job.LookedAt);
        Assert.Equal("near", files.With("nc.setup.json", "{}").Resolve().Machine.Name);
    }

    [Fact]
    public void Options_come_before_all_files()
    {
        var files = new MemoryFiles()
            .With("jobs/plate/part.setup.json", """{ "machine": "a.machine.json", "material": "brass" }""")
            .With("jobs/plate/a.machine.json", """{ "name": "a" }""")
            .With("other.setup.json", """{ "machine": "jobs/plate/a.machine.json", "material": "steel" }""");

        var setupOnly = files.Resolve(options: new JobOptions { SetupPath = At("other.setup.json") });
        var both = files.Resolve(options: new JobOptions { SetupPath = At("other.setup.json"), Machine = "training-mill", Readings = ["dwell=byPoint", "repeats=K"] });
        var file = files.Resolve(options: new JobOptions { Machine = At("jobs/plate/a.machine.json") });

        Assert.Equal(("steel", "a"), (setupOnly.Setup.Material, setupOnly.Machine.Name));
        Assert.Equal(("steel", "training-mill", true), (both.Setup.Material, both.Machine.Name, both.Machine.IsChosen));
        Assert.Equal((DwellReading.ByPoint, RepeatReading.K), (both.Machine.Readings.Dwell, both.Machine.Readings.Repeats));
        Assert.Equal(("a", true), (file.Machine.Name, file.Machine.IsChosen));
    }

    [Fact]
    public void A_reading_alone_does_not_choose_a_machine()
    {
        var job = new MemoryFiles().Resolve(options: new JobOptions { Readings = ["dwell=milliseconds"] });

        Assert.Equal((false, DwellReading.Milliseconds), (job.Machine.IsChosen, job.Machine.Readings.Dwell));
    }

    [Fact]
    public void Options_that_cannot_be_followed_are_told_in_one_sentence_each()
    {
        var files = new MemoryFiles().With("folder.json", FileState.IsFolder);
        var options = new JobOptions { SetupPath = At("no.setup.json"), Machine = "iso-mil", Readings = ["dwell=ages", "repeats=K"] };

        var job = files.Resolve(options: options);
        var folder = files.Resolve(options: new JobOptions { SetupPath = At("folder.json"), Machine = At("folder.json") });
        var noPath = files.Resolve(options: new JobOptions { SetupPath = "a\0b", Machine = "" });

        Assert.Collection(
            job.OptionErrors,
            e => Assert.Contains("there is no file no.setup.json", e, StringComparison.Ordinal),
            e => Assert.Contains("there is no file iso-mil, nor is it a built-in machine (iso-mill, training-mill)", e, StringComparison.Ordinal),
            e => Assert.Contains("no choice \"ages\"", e, StringComparison.Ordinal));
        Assert.Equal((false, RepeatReading.K), (job.Machine.IsChosen, job.Machine.Readings.Repeats));
        Assert.Equal(2, folder.OptionErrors.Count(e => e.Contains("is a folder, not a file", StringComparison.Ordinal)));
        Assert.Equal(2, noPath.OptionErrors.Length);
        Assert.All([.. job.OptionErrors, .. folder.OptionErrors, .. noPath.OptionErrors], e => Assert.EndsWith(".", e, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("missing.machine.json", "there is no file missing.machine.json", null)]
    [InlineData("iso-mil", "did you mean \\\"iso-mill\\\"?", "\"iso-mill\"")]
    [InlineData("folder", "folder is a folder, not a file", null)]
    [InlineData("secret", "secret may not be read by you", null)]
    public void A_machine_that_cannot_be_had_is_a_problem_where_the_setup_names_it(string name, string message, string? replacement)
    {
        var files = new MemoryFiles()
            .With("jobs/plate/part.setup.json", $"{{\n  \"machine\": \"{name}\" }}")
            .With("jobs/plate/folder", FileState.IsFolder).With("jobs/plate/secret", FileState.Denied);

        var job = files.Resolve();

        var problem = Assert.Single(job.Problems);
        Assert.Equal(("setup-value", At("jobs/plate/part.setup.json"), 2, 14), (problem.Name, problem.Path, problem.Line, problem.Column));
        Assert.Contains(message.Replace("\\", "", StringComparison.Ordinal), problem.Message, StringComparison.Ordinal);
        Assert.Contains("iso-mill stands in for it", problem.Message, StringComparison.Ordinal);
        Assert.Equal(replacement, problem.Replacement);
        Assert.Same(MachineProfile.IsoMill, job.Machine);
    }

    [Theory]
    [InlineData(FileState.IsFolder, "is a folder, not a file")]
    [InlineData(FileState.Denied, "may not be read by you")]
    [InlineData(FileState.TooLarge, "is larger than 16 MB")]
    [InlineData(FileState.IsStream, "is a pipe or a device, not a file")]
    [InlineData(FileState.LinkToNothing, "is a link to a file that is not there")]
    [InlineData(FileState.LinkRing, "is a link that leads back to itself")]
    [InlineData(FileState.Failed, "could not be read")]
    public void What_stands_in_a_files_place_but_cannot_be_read_is_one_problem_each(FileState state, string message)
    {
        var job = new MemoryFiles().With("jobs/plate/nc.setup.json", state).With("nc.machine.json", state).With("nc.setup.json", "{}").Resolve();

        Assert.Collection(
            job.Problems,
            p => Assert.Equal(("setup-malformed", At("jobs/plate/nc.setup.json"), 1), (p.Name, p.Path, p.Line)),
            p => Assert.Equal(("setup-malformed", At("nc.machine.json"), 1), (p.Name, p.Path, p.Line)));
        Assert.All(job.Problems, p => Assert.Contains(message, p.Message, StringComparison.Ordinal));
        Assert.True(job.Setup is { IsPresent: true, ObstaclesAreKnown: false });
        Assert.False(job.Machine.IsChosen);
    }

    [Fact]
    public void Bases_in_a_circle_are_a_problem_at_the_base_that_closes_it()
    {
        var job = new MemoryFiles()
            .With("nc.machine.json", """{ "base": "b.machine.json" }""")
            .With("b.machine.json", """{ "base": "c.machine.json", "maxFeed": 100 }""")
            .With("c.machine.json", """{ "base": "./nc.machine.json" }""").Resolve();

        var problem = Assert.Single(job.Problems);
        Assert.Equal((At("c.machine.json"), 1, 11), (problem.Path, problem.Line, problem.Column));
        Assert.Contains("nc.machine.json is based on b.machine.json is based on c.machine.json is based on nc.machine.json", problem.Message, StringComparison.Ordinal);
        Assert.Equal((false, 100), (job.Machine.IsChosen, job.Machine.MaxFeed!.Value));
    }

    [Fact]
    public void A_machine_based_on_itself_and_a_chain_without_end_stop()
    {
        var files = new MemoryFiles().With("nc.machine.json", """{ "base": "nc.machine.json" }""");
        Assert.Contains("circle", Assert.Single(files.Resolve().Problems).Message, StringComparison.Ordinal);

        for (var i = 0; i < 20; i++)
            files.With(i == 0 ? "nc.machine.json" : $"{i}.json", $$"""{ "base": "{{i + 1}}.json" }""");
        Assert.Contains("more than 16", Assert.Single(files.Resolve().Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Problems_of_every_file_carry_its_path()
    {
        var job = new MemoryFiles()
            .With("jobs/plate/part.setup.json", """{ "machine": "../m.json", "clearance": -1 }""")
            .With("jobs/m.json", """{ "base": "b.json", "tools": 0 }""")
            .With("jobs/b.json", "{ \"tools\" }").Resolve();

        Assert.Equal(new[] { "jobs/plate/part.setup.json", "jobs/b.json", "jobs/m.json" }.Select(At), job.Problems.Select(p => p.Path));
        Assert.False(job.Machine.IsChosen);
    }
}
