namespace Heaveline.Files.Forms;

/// <summary>How the value of a key is entered.</summary>
public enum FieldKind
{
    /// <summary>A number with a unit and, if known, a doubt.</summary>
    Quantity,

    /// <summary>A number without a unit, or in per cent, with a doubt if known.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>One of some words.</summary>
    Word,

    /// <summary>true or false.</summary>
    YesNo,

    /// <summary>Some text.</summary>
    Text,

    /// <summary>A phrase with a pattern of its own, such as two travels.</summary>
    Phrase,

    /// <summary>Rows of numbers with units, under columns.</summary>
    Table,

    /// <summary>A group of keys.</summary>
    Group,

    /// <summary>A list of items, all of one kind.</summary>
    List,

    /// <summary>Values of one kind, each under a name of the user's choice.</summary>
    Names,
}
