namespace Heaveline.Search;

/// <summary>What is done with the setups of a piece of work.</summary>
internal enum PieceStage
{
    /// <summary>They are driven over every use case.</summary>
    Drive,

    /// <summary>They are looked at standing under every load, and driven with those loads too that no use case has.</summary>
    Look,
}
