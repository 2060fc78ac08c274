using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>All that an object holds, as text: two that differ in anything are described differently.</summary>
static class Described
{
    public static string Of(object? value)
    {
        var text = new StringBuilder();
        Add(value, text);
        return text.ToString();
    }

    static void Add(object? value, StringBuilder text)
    {
        switch (value)
        {
            case null:
                text.Append("none");
                return;
            case string or Enum or bool:
                text.Append('"').Append(value).Append('"');
                return;
            case IConvertible number:
                text.Append(number.ToString(CultureInfo.InvariantCulture));
                return;
            case IDictionary:
            case IEnumerable:
                var items = ((IEnumerable)value).Cast<object?>().Select(Of);
                text.Append('[').AppendJoin(", ", value is IDictionary ? items.Order(StringComparer.Ordinal) : items).Append(']');
                return;
        }
        text.Append(value.GetType().Name).Append('(');
        foreach (var field in FieldsOf(value.GetType()))
        {
            // The table in the executable is behind every user's.
            if (field.Name == "_behind")
                continue;
            Add(field.GetValue(value), text);
            text.Append("; ");
        }
        text.Append(')');
    }

    /// <summary>Those of what a type is made from too, whose own are not among its.</summary>
    static IEnumerable<FieldInfo> FieldsOf(Type? type)
    {
        for (; type is not null; type = type.BaseType)
            foreach (var field in type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
                yield return field;
    }
}
