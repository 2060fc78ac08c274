using System.Collections.Immutable;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Server.Jobs;

/// <summary>What a program is run with: its setup and machine, what is wrong in their files, and every path that was looked at, there or not.</summary>
internal sealed record Job(Setup Setup, MachineProfile Machine, ImmutableArray<JobProblem> Problems, ImmutableArray<string> LookedAt);

/// <summary>A mistake in a setup or machine file. Line and columns count from 0, columns in bytes.</summary>
internal sealed record JobProblem(string Path, string Id, string Name, Checks.Severity Severity, int Line, int StartColumn, int EndColumn, string Message);
