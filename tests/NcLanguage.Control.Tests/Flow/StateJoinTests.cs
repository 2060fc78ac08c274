using System.Reflection;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Where two ways come together, no part of the state may be taken from one of them where the other differs.</summary>
public sealed class StateJoinTests
{
    public static TheoryData<string> Parts() => [.. typeof(ControlState).GetFields(BindingFlags.Public | BindingFlags.Instance).Select(field => field.Name)];

    /// <summary>Joining in either order gives the same: a part that is forgotten would be that of the first.</summary>
    [Theory]
    [MemberData(nameof(Parts))]
    public void No_part_is_that_of_one_way_alone(string part)
    {
        var field = typeof(ControlState).GetField(part)!;
        var a = ControlState.AtStart(54);
        object boxed = a;
        field.SetValue(boxed, Another(field.GetValue(boxed), field.FieldType));
        var b = (ControlState)boxed;
        Assert.NotEqual(a, b);
        Assert.Equal(field.GetValue(StateJoin.Join(a, b)), field.GetValue(StateJoin.Join(b, a)));
        Assert.Equal(a, StateJoin.Join(a, a));
    }

    static object Another(object? value, Type type)
    {
        if (type == typeof(Variables))
            return Variables.None.With(1, 5);
        if (type == typeof(OffsetData))
            return OffsetData.None.WithLength(1, new SetSize(5, 0));
        if (type == typeof(ProgramFrame))
            return new ProgramFrame(null, null, new Rotation(WorkPlane.XY, default, 30), null);
        if (type == typeof(bool))
            return !(bool)value!;
        if (type == typeof(int))
            return (int)value! + 7;
        if (type == typeof(double))
            return 41.5;
        if (type.IsEnum)
            return Enum.GetValues(type).Cast<object>().First(other => !other.Equals(value));
        // Points and the like: every number of it another.
        var made = Activator.CreateInstance(type)!;
        var constructor = type.GetConstructors().OrderByDescending(one => one.GetParameters().Length).First();
        return constructor.GetParameters().All(parameter => parameter.ParameterType == typeof(double))
            ? constructor.Invoke([.. constructor.GetParameters().Select((_, i) => (object)(3.5 + i))])
            : made;
    }
}
