namespace Heaveline.Studies;

/// <summary>What kind of words a choice takes.</summary>
public enum ChoiceKind
{
    /// <summary>Names or files of cars.</summary>
    Car,

    /// <summary>A road's name or file.</summary>
    Road,

    /// <summary>Files, folders or archives of a drive's log.</summary>
    Log,

    /// <summary>Files of sheets of cable ties.</summary>
    Ties,

    /// <summary>Files of films of a passing car.</summary>
    Film,

    /// <summary>Files of lists of parts.</summary>
    Parts,

    /// <summary>One of the car's load states by its name.</summary>
    Load,

    /// <summary>One of the car's seats by its name.</summary>
    Seat,

    /// <summary>A speed with its unit.</summary>
    Speed,

    /// <summary>Speeds with their units and commas between.</summary>
    Speeds,

    /// <summary>Another quantity with its unit.</summary>
    Quantity,

    /// <summary>A number without a unit.</summary>
    Number,

    /// <summary>A word of a list.</summary>
    Word,

    /// <summary>Yes, or nothing.</summary>
    Tick,
}
