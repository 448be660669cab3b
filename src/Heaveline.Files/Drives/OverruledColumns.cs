using System.Globalization;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>The columns of one text as the user says them instead of their names.</summary>
/// <param name="file">The file.</param>
/// <param name="isAlone">Whether it is the only file.</param>
/// <param name="overrulings">What the user says.</param>
internal sealed class OverruledColumns(string file, bool isAlone, IReadOnlyList<Overruling> overrulings)
{
    private static readonly string[] Axes = ["x", "y", "z"];

    private readonly Overruling[] said =
    [
        .. overrulings.Where(o => o.Columns.Length > 0 && (o.File.Length == 0 ? isAlone : IsOf(file, o.File))),
    ];

    /// <summary>What a column means.</summary>
    /// <param name="index">Its place in a row, from 0.</param>
    /// <param name="name">Its name.</param>
    /// <param name="own">What its name tells.</param>
    public ColumnMeaning Meaning(int index, string name, ColumnMeaning own)
    {
        foreach (var overruling in said)
        {
            var kind = KindOf(overruling.About);
            for (var k = 0; k < overruling.Columns.Length; k++)
            {
                if (Is(index, name, overruling.Columns[k]))
                {
                    return own with { Kind = kind, Axis = overruling.Columns.Length == 3 ? Axes[k] : "", Group = "as taken" };
                }
            }

            if (own.Kind == kind || (kind == ColumnKind.Acceleration && own.Kind == ColumnKind.WithoutGravity))
            {
                own = own with { Kind = null };
            }
        }

        return own;
    }

    /// <summary>Whether the user names the columns of a sensor.</summary>
    public bool Has(ColumnKind kind) => said.Any(o => KindOf(o.About) == kind);

    /// <summary>Why what is said cannot be taken, a sentence; null where it can.</summary>
    /// <param name="names">Names of the columns.</param>
    public string? Missing(IReadOnlyList<string> names)
    {
        foreach (var column in said.SelectMany(o => o.Columns))
        {
            if (!names.Where((name, index) => Is(index, name, column)).Any())
            {
                return string.Create(CultureInfo.InvariantCulture, $"it has no column '{column}' among its {names.Count}.");
            }
        }

        return null;
    }

    /// <summary>What is said of columns and can be of none of several files, a refusal each.</summary>
    /// <param name="files">The files.</param>
    /// <param name="overrulings">What the user says.</param>
    public static IEnumerable<LogRefusal> Homeless(IReadOnlyList<string> files, IReadOnlyList<Overruling> overrulings) =>
        from o in overrulings
        where o.Columns.Length > 0 && (o.File.Length == 0 ? files.Count != 1 : !files.Any(f => IsOf(f, o.File)))
        select new LogRefusal(
            o.About,
            o.File.Length == 0 ? "its columns are named and there are several files." : $"there is no file '{o.File}'.",
            $"Name the file: {o.About}: column 3 of {(files.Count > 0 ? files[0] : "trip.csv")}.");

    private static bool IsOf(string file, string said) =>
        file == said || file.EndsWith("/" + said, StringComparison.Ordinal) || file.EndsWith("\\" + said, StringComparison.Ordinal);

    private static bool Is(int index, string name, string column) =>
        int.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number == index + 1
            : string.Equals(name.Trim().Trim('"'), column, StringComparison.OrdinalIgnoreCase);

    private static ColumnKind KindOf(string about) => about switch
    {
        "time" => ColumnKind.Time,
        "acceleration" => ColumnKind.Acceleration,
        "turn-rate" => ColumnKind.TurnRate,
        _ => ColumnKind.Speed,
    };
}
