namespace Heaveline.Cars;

/// <summary>A printed rule that says how far the dipped beam of a car may drop under its loads; the user chooses which one holds.</summary>
public enum HeadlampRule
{
    /// <summary>UN Regulation 48, 09 series of amendments: cars approved by it.</summary>
    UnRegulation48Series09,

    /// <summary>UN Regulation 48 up to the 08 series.</summary>
    UnRegulation48Series08,

    /// <summary>The British inspection of cars in use, since March 2016.</summary>
    BritishInspection,

    /// <summary>What German inspections of cars are said to use.</summary>
    GermanInspection,
}
