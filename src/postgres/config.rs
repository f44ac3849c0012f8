//! The settings of the private server, written anew at every start.

use std::path::Path;

use super::{ADMIN, Durability, OWNER, SERVICE};

/// `postgresql.conf` for a small shop: one service, a handful of connections,
/// little memory, and every acknowledged write on the disk.
pub fn postgresql_conf(socket: &Path, config: &Path, durability: Durability) -> String {
    let socket = quoted(&format!("\"{}\"", socket.display().to_string().replace('"', "\"\"")));
    let hba = quoted(&config.join("pg_hba.conf").display().to_string());
    let ident = quoted(&config.join("pg_ident.conf").display().to_string());
    let durability = match durability {
        Durability::Lasting => "max_connections = 40\nfsync = on\nsynchronous_commit = on\nfull_page_writes = on\n",
        // Many tests at once, each with pools of its own.
        Durability::ThrowAway => {
            "max_connections = 200\nfsync = off\nsynchronous_commit = off\nfull_page_writes = off\n\
             wal_level = minimal\nmax_wal_senders = 0\nautovacuum_naptime = 1h\n"
        }
    };
    format!(
        "# Written by Endplay at every start. Put settings of your own into local.conf beside this file.\n\
         listen_addresses = ''\n\
         unix_socket_directories = {socket}\n\
         unix_socket_permissions = 0700\n\
         hba_file = {hba}\n\
         ident_file = {ident}\n\
         shared_buffers = 64MB\n\
         effective_cache_size = 512MB\n\
         work_mem = 8MB\n\
         maintenance_work_mem = 32MB\n\
         max_wal_size = 512MB\n\
         random_page_cost = 1.1\n\
         jit = off\n\
         {durability}\
         logging_collector = off\n\
         log_line_prefix = '%m [%p] '\n\
         log_checkpoints = off\n\
         lc_messages = 'C'\n\
         timezone = 'UTC'\n\
         log_timezone = 'UTC'\n\
         include = 'local.conf'\n"
    )
}

/// `pg_hba.conf`: the operating system vouches for who connects; no passwords,
/// no network.
pub fn pg_hba_conf() -> String {
    "# Written by Endplay at every start.\nlocal all all peer map=endplay\n".into()
}

/// `pg_ident.conf`: the user who runs Endplay, and nobody else, may take each
/// of the three roles.
pub fn pg_ident_conf(user: &str) -> String {
    let user = format!("\"{}\"", user.replace('"', "\"\""));
    let lines = [ADMIN, OWNER, SERVICE].map(|role| format!("endplay {user} {role}\n"));
    format!("# Written by Endplay at every start.\n{}", lines.concat())
}

fn quoted(value: &str) -> String {
    format!("'{}'", value.replace('\'', "''"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_network_and_nothing_lost_in_a_shop() {
        let conf = postgresql_conf(Path::new("/data/socket"), Path::new("/data/config"), Durability::Lasting);
        assert!(conf.contains("listen_addresses = ''\n"));
        assert!(conf.contains("fsync = on\n") && conf.contains("full_page_writes = on\n"));
        assert!(!conf.contains("= off\nfull_page_writes"));
    }

    #[test]
    fn odd_letters_in_a_path_stay_inside_their_quotes() {
        let conf = postgresql_conf(Path::new("/o'neil, \"bob\"/s"), Path::new("/o'neil"), Durability::Lasting);
        assert!(conf.contains(r#"unix_socket_directories = '"/o''neil, ""bob""/s"'"#), "{conf}");
        assert!(conf.contains("hba_file = '/o''neil/pg_hba.conf'"), "{conf}");
    }

    #[test]
    fn only_the_user_of_the_program_gets_in() {
        let ident = pg_ident_conf("shop");
        let lines: Vec<&str> = ident.lines().filter(|l| !l.starts_with('#')).collect();
        assert_eq!(lines.len(), 3);
        assert!(lines.iter().all(|l| l.starts_with("endplay \"shop\" endplay_")), "{ident}");
    }
}
