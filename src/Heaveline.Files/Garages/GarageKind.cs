namespace Heaveline.Files.Garages;

/// <summary>What a file of a garage describes.</summary>
public enum GarageKind
{
    /// <summary>None of the below, or a text that cannot be read.</summary>
    Unknown,

    /// <summary>A vehicle.</summary>
    Car,

    /// <summary>A set of changes to a vehicle.</summary>
    Variant,

    /// <summary>A road.</summary>
    Road,

    /// <summary>A drive, with its logs beside it.</summary>
    Drive,

    /// <summary>A film of a passing car, with its track beside it.</summary>
    Film,

    /// <summary>A sheet of cable ties.</summary>
    Ties,

    /// <summary>A list of parts.</summary>
    Parts,

    /// <summary>What the garage remembers of whoever works in it.</summary>
    Choices,

    /// <summary>A study of what to buy.</summary>
    Study,

    /// <summary>Machines that help one another's studies.</summary>
    Crew,
}
