namespace Heaveline.Cluster;

/// <summary>Notices of a crew in a database. Each stays for a while after it was last put up, by the clock of the database.</summary>
internal interface INoticeBoard : IAsyncDisposable
{
    /// <summary>Puts a notice up, or up anew.</summary>
    /// <param name="name">Which.</param>
    /// <param name="words">What it says.</param>
    /// <param name="stays">For how long.</param>
    Task Put(string name, string words, TimeSpan stays);

    /// <summary>Takes a notice down.</summary>
    /// <param name="name">Which.</param>
    Task Take(string name);

    /// <summary>Those that are up.</summary>
    Task<IReadOnlyList<string>> All();
}
