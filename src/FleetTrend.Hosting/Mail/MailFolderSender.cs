using System.Security.Cryptography;
using System.Text;
using FleetTrend.Hosting.Configuration;
using MimeKit;

namespace FleetTrend.Hosting.Mail;

/// <summary>Writes messages as .eml files into the mailbox folder; the same message twice is the same file. Their owner alone can read them.</summary>
public sealed class MailFolderSender(MailSettings settings) : IMailSender
{
    /// <inheritdoc/>
    public async Task SendAsync(MimeMessage message, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(message);
        OwnerOnly.CreateFolder(settings.Folder);
        var path = Path.Combine(settings.Folder, FileName(message));
        var unfinished = path + ".part";
        await using (var file = OwnerOnly.CreateFile(unfinished))
            await message.WriteToAsync(file, ct);
        File.Move(unfinished, path, overwrite: true);
    }

    /// <summary>Readable date first, then a hash of the message identifier: sorts by time and never collides.</summary>
    private static string FileName(MimeMessage message)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(message.MessageId ?? "")))[..12];
        return $"{message.Date.UtcDateTime:yyyy-MM-dd}-{hash}.eml";
    }
}
