namespace Heaveline.Files;

/// <summary>What a path leads to.</summary>
internal enum FileNodeKind
{
    /// <summary>Nothing, or nothing that can be seen.</summary>
    Nothing,

    /// <summary>A regular file.</summary>
    File,

    /// <summary>A folder.</summary>
    Folder,

    /// <summary>A pipe, a socket or a device.</summary>
    Special,

    /// <summary>A file that the system makes up while it is read, such as its log: it may keep a reader waiting for ever.</summary>
    MadeUp,
}
