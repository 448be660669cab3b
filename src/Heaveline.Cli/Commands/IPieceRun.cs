using Heaveline.Pieces;

namespace Heaveline.Cli.Commands;

/// <summary>What stands between a study and those who do its pieces, while it runs.</summary>
internal interface IPieceRun : IDisposable
{
    /// <summary>How many pieces are asked for at once; 0: as many as the study asks for by itself.</summary>
    int PiecesAtOnce { get; }

    /// <summary>Doing pieces by way of it.</summary>
    /// <param name="doer">Does them.</param>
    IPieceDoer Through(IPieceDoer doer);

    /// <summary>Says at the end what came of it.</summary>
    void Say();
}
