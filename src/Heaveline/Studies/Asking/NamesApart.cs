namespace Heaveline.Studies;

/// <summary>Names of cars that stand side by side, each its own.</summary>
public static class NamesApart
{
    /// <summary>The names: cars of one name are told apart by their short names, and those by their place in the list.</summary>
    /// <param name="cars">Name and short name of each.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<(string Name, string ShortName)> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        var names = cars.Select(c => cars.Count(other => other.Name == c.Name) == 1 ? c.Name : $"{c.Name} ({c.ShortName})").ToList();
        return [.. names.Select((name, i) => names.Count(other => other == name) == 1 ? name : FormattableString.Invariant($"{name}, no. {i + 1}"))];
    }
}
