namespace Heaveline.Drives.Identification;

/// <summary>Why a drive tells no car, or not all of it.</summary>
public enum RefusalKind
{
    /// <summary>Too few crossings, or too little rough road.</summary>
    TooFew,

    /// <summary>The drive says little of a number.</summary>
    NotLearned,

    /// <summary>Two different cars explain the drive equally well.</summary>
    TwoAnswers,

    /// <summary>Two halves of the drive tell different cars.</summary>
    Halves,

    /// <summary>The model of the car does not move like the log.</summary>
    Misfit,

    /// <summary>A value that no road car has.</summary>
    Edge,

    /// <summary>No wheelbase.</summary>
    Wheelbase,

    /// <summary>The phone swings on its holder.</summary>
    SoftMount,

    /// <summary>No pitch rate.</summary>
    NoGyro,

    /// <summary>The front axle came second: backwards, or a log turned round.</summary>
    Reversed,
}
