using System.Collections.Immutable;

namespace NcLanguage.Machine.Profiles;

/// <summary>One choice of a reading: the word that stands for it in files and options, and in one sentence what the control then does.</summary>
public sealed record ReadingChoice(string Name, string Meaning);

/// <summary>One named way in which controls differ: its choices, and how it is got from and put into <see cref="Readings"/>.</summary>
public sealed class Reading
{
    readonly Func<Readings, int> _get;
    readonly Func<Readings, int, Readings> _set;

    internal Reading(
        string name, string meaning, string consequence, ImmutableArray<ReadingChoice> choices, Func<Readings, int> get, Func<Readings, int, Readings> set)
    {
        (Name, Meaning, Consequence, Choices) = (name, meaning, consequence, choices);
        (_get, _set) = (get, set);
    }

    /// <summary>The name in machine files and options, such as holePositions.</summary>
    public string Name { get; }

    /// <summary>What the reading decides, in one sentence.</summary>
    public string Meaning { get; }

    /// <summary>What goes wrong at the machine where it is taken the other way, in one sentence.</summary>
    public string Consequence { get; }

    /// <summary>The choices, in the order of the enumeration they stand for.</summary>
    public ImmutableArray<ReadingChoice> Choices { get; }

    /// <summary>True where the choices are true and false, which machine files write without quotes.</summary>
    public bool IsTruth => Choices[0].Name == "true";

    /// <summary>The choices' names.</summary>
    public IEnumerable<string> ChoiceNames => Choices.Select(choice => choice.Name);

    /// <summary>The choice that is in force.</summary>
    public ReadingChoice Of(Readings readings) => Choices[_get(readings)];

    /// <summary>The readings with this one put to a choice; null where there is no choice of that name.</summary>
    public Readings? With(Readings readings, string choice)
    {
        for (var i = 0; i < Choices.Length; i++)
        {
            if (Choices[i].Name == choice)
                return _set(readings, i);
        }
        return null;
    }
}
