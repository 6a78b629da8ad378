using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using MimeKit;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>Mails as files: reports name aircraft, people and trouble, and are nobody else's to read.</summary>
public sealed class MailFolderTests : IDisposable
{
    private const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly DirectoryInfo temporary = Directory.CreateTempSubdirectory("fleettrend-mail-");

    public void Dispose() => temporary.Delete(recursive: true);

    [Fact]
    public async Task A_mail_file_and_its_folder_are_open_to_their_owner_alone()
    {
        var folder = Path.Combine(temporary.FullName, "mail");
        await SendAsync(folder);
        Assert.Equal(OwnersFile | UnixFileMode.UserExecute, new DirectoryInfo(folder).UnixFileMode);
        Assert.Equal(OwnersFile, new FileInfo(Assert.Single(Directory.GetFiles(folder))).UnixFileMode);
    }

    [Fact]
    public async Task The_same_mail_again_takes_the_place_of_a_file_that_others_could_read()
    {
        await SendAsync(temporary.FullName);
        var file = Assert.Single(temporary.GetFiles());
        file.UnixFileMode |= UnixFileMode.GroupRead | UnixFileMode.OtherRead;
        await SendAsync(temporary.FullName);
        Assert.Equal(OwnersFile, new FileInfo(Assert.Single(temporary.GetFiles()).FullName).UnixFileMode);
    }

    private static async Task SendAsync(string folder)
    {
        using var message = new MimeMessage
        {
            MessageId = "1@synthetic.example",
            Date = new DateTimeOffset(2026, 2, 3, 6, 0, 0, TimeSpan.Zero),
            Body = new TextPart { Text = "Synthetic", ContentTransferEncoding = ContentEncoding.SevenBit },
        };
        await new MailFolderSender(new MailSettings { Folder = folder }).SendAsync(message, default);
    }
}
