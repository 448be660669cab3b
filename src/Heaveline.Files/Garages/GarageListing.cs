namespace Heaveline.Files.Garages;

/// <summary>What a garage holds.</summary>
/// <param name="Entries">All files in the order of their names, then the roads that are always there.</param>
/// <param name="IsCut">Whether there are more files than are listed.</param>
public sealed record GarageListing(IReadOnlyList<GarageEntry> Entries, bool IsCut)
{
    /// <summary>What is named as a car file and is not listed, with why, in the order of the names.</summary>
    public IReadOnlyList<(string Name, string Why)> LeftOut { get; init; } = [];

    /// <summary>The cars.</summary>
    public IEnumerable<GarageEntry> Cars => Of(GarageKind.Car);

    /// <summary>The variants.</summary>
    public IEnumerable<GarageEntry> Variants => Of(GarageKind.Variant);

    /// <summary>The roads.</summary>
    public IEnumerable<GarageEntry> Roads => Of(GarageKind.Road);

    /// <summary>The drives.</summary>
    public IEnumerable<GarageEntry> Drives => Of(GarageKind.Drive);

    /// <summary>The films of passing cars.</summary>
    public IEnumerable<GarageEntry> Films => Of(GarageKind.Film);

    /// <summary>The sheets of cable ties.</summary>
    public IEnumerable<GarageEntry> Ties => Of(GarageKind.Ties);

    /// <summary>The lists of parts.</summary>
    public IEnumerable<GarageEntry> Parts => Of(GarageKind.Parts);

    /// <summary>The studies.</summary>
    public IEnumerable<GarageEntry> Studies => Of(GarageKind.Study);

    /// <summary>The files of crews.</summary>
    public IEnumerable<GarageEntry> Crews => Of(GarageKind.Crew);

    private IEnumerable<GarageEntry> Of(GarageKind kind) => Entries.Where(entry => entry.Kind == kind);
}
